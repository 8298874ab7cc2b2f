// The order of evaluation of the models: each after all that it needs, and late models after all others.
#pragma once

#include <cstddef>
#include <vector>

#include "host/engine/graph/graph.hpp"

namespace flutebook::engine {

struct ModelOrder {
    std::vector<std::size_t> models;
    std::size_t first_late;  // how many are not late
};

/// Of a graph whose links are made. Of the models that are ready the first goes first. Throws ModelError, naming both
/// ends of each joint, where they need each other in a circle.
[[nodiscard]] ModelOrder order_models(const Graph& graph);

}  // namespace flutebook::engine
