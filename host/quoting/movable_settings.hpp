// The numbers that a request could give, and which models each can reach: the same for every order of an engine.
#pragma once

#include <cstddef>
#include <vector>

#include "host/engine/engine.hpp"

namespace flutebook::quoting {

/// A number of a request's extras that no other model replaces.
struct MovableSetting {
    std::size_t model, setting, request_index;
    std::vector<double> values;  // its low end, its high end and 1, where they are in its range, each once
};

/// In the order of the models and their settings.
[[nodiscard]] std::vector<MovableSetting> movable_settings(const engine::Engine& engine);

/// By model, the models that a number of it can reach, itself among them.
[[nodiscard]] std::vector<std::vector<bool>> reached_models(const engine::Graph& graph);

}  // namespace flutebook::quoting
