// Writes a request that came from no file as the text of a file, for a saved quote to keep.
#pragma once

#include <string>

#include "host/base/yaml/node.hpp"

namespace flutebook::orders {

/// The tree as YAML, a key a line; read again, it gives the same request. `root` is a map.
[[nodiscard]] std::string request_text(const base::Node& root);

}  // namespace flutebook::orders
