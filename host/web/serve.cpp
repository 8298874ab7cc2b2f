#include "host/web/serve.hpp"

#include <algorithm>
#include <cstdio>
#include <exception>
#include <filesystem>
#include <optional>
#include <thread>
#include <utility>
#include <vector>

#include "host/base/errors.hpp"
#include "host/handover/handover.hpp"
#include "host/saved_quotes/find_quotes.hpp"
#include "host/trim_history/trim_history.hpp"
#include "host/web/kept.hpp"

namespace flutebook::web {

namespace {

void tell_refused(const std::vector<std::string>& lines) {
    for (const std::string& line : lines) std::fprintf(stderr, "flutebook serve: reload: refused: %s\n", line.c_str());
}

// Nobody waits for an answer.
void reload_and_tell(Reload& reload) try {
    tell_refused(reload.take_new_plant());
} catch (const std::exception& fault) {
    std::fprintf(stderr, "flutebook serve: reload: could not be done: %s\n", fault.what());
}

struct OpenedPlant {
    workplace::Workplace workplace;
    std::vector<std::string> refused = {};  // why its files as they are now were not taken
};

// Files that were fit a moment ago may be others by now. Whoever is served must not lose the server by it: it goes on
// with the files of the process before this one, `last`, where there was one.
OpenedPlant open_plant(const std::string& folder, const plant::FileTexts& last) {
    std::vector<std::string> refused;
    try {
        return {workplace::open(folder)};
    } catch (const InputError& error) {
        if (last.empty()) throw;
        refused = error.lines();
    } catch (const ModelError& error) {
        if (last.empty()) throw;
        refused = error.lines();
    }
    return {workplace::open(plant::read_plant(folder, last)), std::move(refused)};
}

// Everything is closed when this returns; then what is left, for the next process.
std::optional<handover::Handover> serve_once(const ServeOptions& asked, const handover::Handover& taken,
                                             const std::function<void(const std::string&)>& tell) {
    const Kept kept = kept_of(taken.kept);
    // Plugins are tried while there is one thread and no file is open for writing.
    OpenedPlant opened = open_plant(asked.plant, kept.files);
    opened.workplace.plant.trim_source = trim_history::newest_trim_source(asked.site.ledger);
    if (std::filesystem::exists(asked.site.ledger))
        static_cast<void>(saved_quotes::record_older_quotes(asked.site.ledger, asked.site.person));
    PlantSite site(opened.workplace, asked.site, kept);
    tell_refused(opened.refused);
    site.watch().refuse(opened.refused);
    http::Server server(taken.sockets, site, asked.limits);
    site.listen_at(server.port());
    site.tell_addresses(tell);
    site.reload().hand_over_by([&server] { server.hand_over(); });
    if (asked.at_hang_up == ServeOptions::AtHangUp::reload)
        server.at_hang_up([&site] { reload_and_tell(site.reload()); });
    const auto left = server.run(std::max(2u, std::thread::hardware_concurrency()));
    if (!left) return std::nullopt;
    return handover::Handover{*left, in_bytes(site.kept())};
}

}  // namespace

void serve(const ServeOptions& asked, const std::function<void(const std::string&)>& tell) {
    auto taken = handover::taken_over();
    if (!taken) taken = handover::Handover{{handover::listening_socket(asked.port), {}}, ""};
    if (const auto next = serve_once(asked, *taken, tell)) handover::go_on(*next);
}

void try_to_serve(const ServeOptions& asked) {
    static_cast<void>(workplace::open(asked.plant));
}

}  // namespace flutebook::web
