// Plants and orders made from a seed, for properties that must hold whatever the plant: plausible ones, and among them
// the far ends of what is legal (no run waste or half of it, no roll loss, no trim, one sheet or ten million).
//
// Most orders can be made; about one in five fits nowhere. The same seed gives the same plant and order on every
// machine. A test program that uses it links test_plants.
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

/// How many seeds a property tries: `in_full`, or the share of it that the environment's FLUTEBOOK_PROPERTY_SHARE asks
/// for (a slow build tries a tenth), and at least one.
[[nodiscard]] std::uint64_t seeds_to_try(std::uint64_t in_full);

}  // namespace flutebook::fixture
