// The small plant with some of its models isolated, for engines whose life the test controls.
#pragma once

#include <chrono>
#include <string>
#include <vector>

#include "host/engine/engine.hpp"
#include "host/plant/plant.hpp"
#include "host/sandbox/build.hpp"
#include "host/sandbox/child.hpp"

namespace flutebook::isolated {

/// The small plant with all ten of the host's own models.
[[nodiscard]] plant::Plant full_plant();

/// Gives a plant the models that the small one lacks.
void complete(plant::Plant& plant);

/// Isolates these models.
void isolate(plant::Plant& plant, const std::vector<std::string>& models);

/// The deadline of a block in these tests: enough for every model that returns at all.
inline constexpr std::chrono::milliseconds short_patience = std::chrono::milliseconds{200} * sandbox::slowness;

/// Opens the plant as the program does, but without a check and with another deadline.
[[nodiscard]] engine::Engine open(const plant::Plant& plant, std::chrono::milliseconds patience = short_patience);

/// The cost of an order at each quantity, to four decimals, or why it has no quote.
[[nodiscard]] std::string quoted(const plant::Plant& plant, const engine::Engine& engine, const orders::Request& order,
                                 unsigned threads = 2);

}  // namespace flutebook::isolated
