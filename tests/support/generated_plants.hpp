// The plants and orders that the host itself makes up to try models with, for properties that must hold whatever the
// plant. host/plugin_check/generated_order.hpp says what they are like. A test program that uses it links test_plants.
#pragma once

#include <cstdint>

#include "host/orders/request.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::fixture {

struct Generated {
    plant::Plant plant;
    orders::Request request;
};

/// The host's generated order; the models are the small plant's.
[[nodiscard]] Generated generated_order(std::uint64_t seed);

/// How many seeds a property tries: `in_full`, or the share of it that the environment's FLUTEBOOK_PROPERTY_SHARE asks
/// for (a slow build tries a tenth), and at least one.
[[nodiscard]] std::uint64_t seeds_to_try(std::uint64_t in_full);

}  // namespace flutebook::fixture
