// The small plant with some of its models isolated, as engines that live as long as a test wants them to.
#pragma once

#include <chrono>
#include <string>
#include <vector>

#include "host/engine/engine.hpp"
#include "host/plant/plant.hpp"
#include "host/sandbox/build.hpp"

namespace flutebook::isolated {

/// The small plant with all ten of the host's own models.
[[nodiscard]] plant::Plant full_plant();

/// Gives a plant the models that the small one lacks.
void complete(plant::Plant& plant);

/// Has these models work in processes of their own.
void isolate(plant::Plant& plant, const std::vector<std::string>& models);

/// What a model is given for a block here: time enough for any that comes back at all.
inline constexpr std::chrono::milliseconds short_patience = std::chrono::milliseconds{200} * sandbox::slowness;

/// Opens the plant as the program would, without a trial and with another patience.
[[nodiscard]] engine::Engine open(const plant::Plant& plant, std::chrono::milliseconds patience = short_patience);

/// What an order comes to at each quantity, to the last ten-thousandth, or why it has no quote.
[[nodiscard]] std::string quoted(const plant::Plant& plant, const engine::Engine& engine, const orders::Request& order,
                                 unsigned threads = 2);

}  // namespace flutebook::isolated
