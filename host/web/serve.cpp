#include "host/web/serve.hpp"

#include <algorithm>
#include <filesystem>
#include <thread>

#include "host/saved_quotes/find_quotes.hpp"
#include "host/trim_history/trim_history.hpp"

namespace flutebook::web {

void serve(const ServeOptions& asked, const std::function<void(const std::string&)>& tell) {
    // Plugins are tried while there is one thread and no file is open for writing.
    workplace::Workplace workplace = workplace::open(asked.plant);
    workplace.plant.trim_source = trim_history::newest_trim_source(asked.site.ledger);
    if (std::filesystem::exists(asked.site.ledger))
        static_cast<void>(saved_quotes::record_older_quotes(asked.site.ledger, asked.site.person));
    PlantSite site(workplace, asked.site);
    HttpServer server(asked.port, site, asked.limits);
    site.listen_at(server.port());
    site.tell_addresses(tell);
    server.run(std::max(2u, std::thread::hardware_concurrency()));
}

}  // namespace flutebook::web
