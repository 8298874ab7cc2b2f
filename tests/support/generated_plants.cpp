#include "tests/support/generated_plants.hpp"

#include <cstdlib>
#include <utility>

#include "host/plugin_check/generated_order.hpp"
#include "tests/support/small_plant.hpp"

namespace flutebook::fixture {

Generated generated_order(std::uint64_t seed) {
    plugin_check::GeneratedOrder result = plugin_check::make_order(seed);
    plant::Plant base = small_plant();
    result.plant.shifts = std::move(base.shifts);
    result.plant.mills = std::move(base.mills);
    result.plant.models = std::move(base.models);
    return {std::move(result.plant), std::move(result.request)};
}

std::uint64_t seeds_to_try(std::uint64_t in_full) {
    const char* share = std::getenv("FLUTEBOOK_PROPERTY_SHARE");
    if (share == nullptr) return in_full;
    const double asked = std::strtod(share, nullptr) * static_cast<double>(in_full);
    return asked >= 1 ? static_cast<std::uint64_t>(asked) : 1;
}

}  // namespace flutebook::fixture
