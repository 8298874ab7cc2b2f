// Who feeds whom, in names: the engine's graph as both forms of `plugin graph` tell it.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "host/engine/graph/graph.hpp"

namespace flutebook::answers {

/// What a link takes its number from.
struct Feed {
    enum class Kind { fact, model, setting };
    Kind kind;
    std::string model;  // empty of a fact
    std::string name, unit;
};

[[nodiscard]] Feed feed_of(const engine::Graph& graph, const engine::Source& source);

/// The ids of the models that take a model's provide, in order of evaluation, each once; "host" last where the host
/// itself stands on it.
[[nodiscard]] std::vector<std::string> takers_of(const engine::Graph& graph, std::size_t model, std::size_t provide);

}  // namespace flutebook::answers
