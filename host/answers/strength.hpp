// The estimated compression strength of a box, with the figures it was calculated from.
#pragma once

#include <optional>
#include <string>

#include "host/answers/json_text.hpp"

namespace flutebook::answers {

struct Strength {
    double ect_kn_m = 0;  // of the board
    std::string at;       // where that stands
    double caliper_mm = 0, perimeter_mm = 0, height_mm = 0;
    double newtons = 0;

    /// Lower than a seventh of the perimeter: the formula does not hold.
    [[nodiscard]] bool is_too_low() const { return height_mm * 7 < perimeter_mm; }
};

/// Into R of a quote's document: "strength": {"compression_n", "ect_kn_m", "at", "caliper_mm", "perimeter_mm",
/// "height_mm", "is_too_low"}.
void add_strength(Json& tree, const std::optional<Strength>& strength);
[[nodiscard]] std::optional<Strength> strength_in(const Json& tree);

}  // namespace flutebook::answers
