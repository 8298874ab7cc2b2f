#include "host/web/serve.hpp"

#include <algorithm>
#include <cstdio>
#include <exception>
#include <filesystem>
#include <optional>
#include <thread>

#include "host/saved_quotes/find_quotes.hpp"
#include "host/trim_history/trim_history.hpp"
#include "host/web/handover.hpp"

namespace flutebook::web {

namespace {

// Nobody waits for an answer.
void reload_and_tell(Reload& reload) try {
    for (const std::string& line : reload.take_new_plant())
        std::fprintf(stderr, "flutebook serve: reload: refused: %s\n", line.c_str());
} catch (const std::exception& fault) {
    std::fprintf(stderr, "flutebook serve: reload: could not be done: %s\n", fault.what());
}

// Everything is closed when this returns; then what is left, for the next process.
std::optional<Handover> serve_once(const ServeOptions& asked, const Handover& taken,
                                   const std::function<void(const std::string&)>& tell) {
    // Plugins are tried while there is one thread and no file is open for writing.
    workplace::Workplace workplace = workplace::open(asked.plant);
    workplace.plant.trim_source = trim_history::newest_trim_source(asked.site.ledger);
    if (std::filesystem::exists(asked.site.ledger))
        static_cast<void>(saved_quotes::record_older_quotes(asked.site.ledger, asked.site.person));
    PlantSite site(workplace, asked.site, taken.kept);
    http::Server server(taken.sockets, site, asked.limits);
    site.listen_at(server.port());
    site.tell_addresses(tell);
    site.reload().hand_over_by([&server] { server.hand_over(); });
    if (asked.at_hang_up == ServeOptions::AtHangUp::reload)
        server.at_hang_up([&site] { reload_and_tell(site.reload()); });
    const auto left = server.run(std::max(2u, std::thread::hardware_concurrency()));
    if (!left) return std::nullopt;
    return Handover{*left, site.kept()};
}

}  // namespace

void serve(const ServeOptions& asked, const std::function<void(const std::string&)>& tell) {
    auto taken = taken_over();
    if (!taken) taken = Handover{{listening_socket(asked.port), {}}, ""};
    if (const auto next = serve_once(asked, *taken, tell)) go_on(*next);
}

void try_to_serve(const ServeOptions& asked) {
    static_cast<void>(workplace::open(asked.plant));
}

}  // namespace flutebook::web
