// A plant's server, from its start to its end.
#pragma once

#include <cstdint>
#include <functional>
#include <string>

#include "host/http/server.hpp"
#include "host/web/plant_site.hpp"

namespace flutebook::web {

struct ServeOptions {
    std::string plant;  // the folder
    std::uint16_t port = 0;
    SiteOptions site;
    http::ServerLimits limits = {};
    /// SIGHUP reloads the plant, or ends the server as it ends any program.
    enum class AtHangUp { end, reload } at_hang_up = AtHangUp::end;
};

/// Opens the plant, then serves until it is told to end. `tell` is given the address to open, and a new one each time
/// that it was used. When the plant is reloaded, this process begins anew, with the words it was started with; nobody
/// is refused meanwhile, and nobody signed out; files that are fit no longer once it begins are refused, and it goes on
/// with those before them. Throws what cannot be served: InputError, ModelError, LedgerError.
void serve(const ServeOptions& asked, const std::function<void(const std::string&)>& tell);

/// Opens the plant and closes it again. Throws what serve() does of the plant's files and its models.
void try_to_serve(const ServeOptions& asked);

}  // namespace flutebook::web
