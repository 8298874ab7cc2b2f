#include "host/production/grams.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>

#include "ledger/values/rounding.hpp"

namespace flutebook::production {

Grams to_grams(double kg) {
    assert(std::abs(kg) <= most_kg);
    // A hair up, so that half a gram in decimals is half a gram: 1.0005 kg is 1001 g.
    return Grams::of(rounded_half_away(kg * 1000 * (1 + 2e-15)));
}

std::vector<Grams> parts_of(Grams whole, const std::vector<double>& parts_kg) {
    std::vector<Grams> parts;
    Grams sum;
    for (const double kg : parts_kg) {
        parts.push_back(to_grams(kg));
        sum += parts.back();
    }
    if (const auto largest = std::max_element(parts.begin(), parts.end()); largest != parts.end())
        *largest += whole - sum;
    return parts;
}

}  // namespace flutebook::production
