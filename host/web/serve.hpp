// A plant's server, from its start to its end.
#pragma once

#include <cstdint>
#include <functional>
#include <string>

#include "host/web/http.hpp"
#include "host/web/plant_site.hpp"

namespace flutebook::web {

struct ServeOptions {
    std::string plant;  // the folder
    std::uint16_t port = 0;
    SiteOptions site;
    HttpLimits limits = {};
};

/// Opens the plant, then serves until it is told to end. `tell` is given the address to open, and a new one each time
/// that it was used. Throws what cannot be served: InputError, ModelError, LedgerError.
void serve(const ServeOptions& asked, const std::function<void(const std::string&)>& tell);

}  // namespace flutebook::web
