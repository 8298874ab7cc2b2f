// A property held over thousands of seeds. RapidCheck draws the seeds and prints what it needs to draw them again.
#pragma once

#include <rapidcheck.h>

#include <cstdint>
#include <cstdlib>
#include <iostream>

namespace flutebook::fixture {

/// `full` trials, or the share of them that FLUTEBOOK_PROPERTY_SHARE asks for: slow builds take fewer.
inline int trials(int full) {
    const char* share = std::getenv("FLUTEBOOK_PROPERTY_SHARE");
    return share != nullptr ? static_cast<int>(full * std::atof(share)) : full;
}

/// Whether `property`, called with a seed, holds in that many trials. Prints the seed and the reason where it fails.
template <typename Property>
[[nodiscard]] bool holds_for_seeds(int full, Property property) {
    rc::detail::TestParams params = rc::detail::configuration().testParams;
    params.maxSuccess = trials(full);
    params.disableShrinking = true;  // a smaller seed is not a simpler order
    const auto result = rc::detail::checkTestable(
        [&] {
            // At full size from the first trial: a seed is not a number that grows.
            const auto seed = *rc::gen::resize(rc::kNominalSize, rc::gen::arbitrary<std::uint64_t>());
            property(seed);
        },
        rc::detail::TestMetadata(), params);
    rc::detail::printResultMessage(result, std::cerr);
    std::cerr << '\n';
    return result.template is<rc::detail::SuccessResult>();
}

}  // namespace flutebook::fixture
