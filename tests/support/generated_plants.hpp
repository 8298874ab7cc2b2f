// Plants and orders made from a seed, for properties that must hold whatever the plant: plausible ones, and among them
// the far ends of what is legal (no run waste or half of it, no roll loss, no trim, one sheet or ten million).
//
// Most orders can be made; some fit nowhere. The same seed gives the same plant and order on every machine. A test
// program that uses it lists tests/support/generated_plants.cpp and tests/support/small_plant.cpp among its sources.
#pragma once

#include <cstdint>

#include "host/catalogue/plant.hpp"
#include "host/catalogue/request.hpp"

namespace flutebook::fixture {

struct Generated {
    catalogue::Plant plant;
    catalogue::Request request;
};

/// 1 to 3 corrugators, up to 5 converters of every kind, boards of single face, single and double wall; one request
/// in any style, its route given (1 to 3 machines) or left out, 1 to 4 quantities. The models are the small plant's.
[[nodiscard]] Generated generated_order(std::uint64_t seed);

}  // namespace flutebook::fixture
