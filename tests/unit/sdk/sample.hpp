// The small plant with sample models in it: what an author's plugin does in a whole quote.
#pragma once

#include <cstdint>
#include <string>
#include <utility>
#include <vector>

#include "host/engine/engine.hpp"
#include "host/plant/plant.hpp"
#include "tests/support/row_source.hpp"
#include "tests/support/small_plant.hpp"

namespace flutebook::sdk_test {

/// The small plant, whose own plugins are the samples of this folder; none of them is listed yet.
[[nodiscard]] plant::Plant sample_plant();

[[nodiscard]] engine::Engine open(const plant::Plant& plant);

/// A value in plugins.yaml, in column 20 of its line.
[[nodiscard]] plant::Node text_node(const std::string& text, int line);

/// A table in a file: {DC1: 6, FG1: 4}, from a line on, a line each; keys in column 9, values in column 20.
[[nodiscard]] plant::Node table_node(const std::vector<std::pair<std::string, std::string>>& rows, int line,
                                     const std::string& file = "plugins.yaml");

/// Adds a key to a map, as if somebody had written it there.
void give(plant::Node& map, const std::string& key, const base::Place& place, const plant::Node& value);

/// What every candidate of an order at every quantity comes to, in ten-thousandths.
[[nodiscard]] std::vector<std::int64_t> costs(const plant::Plant& plant, const orders::Request& request);

/// The complaints with which a plant does not open, a line each; nothing where it opens.
[[nodiscard]] std::string refusal(const plant::Plant& plant);

/// The same for a request that a plant takes or does not.
[[nodiscard]] std::string refusal(const plant::Plant& plant, const orders::Request& request);

}  // namespace flutebook::sdk_test
