// Why no way can make an order: the ways that were tried, and the limit that excluded each; and a length as people of
// the plant read it.
#pragma once

#include <fmt/format.h>

#include <cmath>
#include <string>
#include <vector>

#include "host/base/inches.hpp"
#include "host/blanks/blank.hpp"
#include "host/geometry/route.hpp"
#include "host/orders/request.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::geometry {

/// A way that does not work, named as a person would point at it, and the limit that stopped it.
struct Refused {
    std::string candidate, limit;
};

/// The limits of an order that no candidate makes, lengths in the plant's units. Complete and short: every corrugator,
/// roll width, number of boxes along and across, and route falls under an entry, and ways that one limit stops alike
/// share it. An entry names only what its limit depends on: "DC1" stands for every corrugator and roll; "C1, 5 or more
/// along the chop, DC1" for every roll and any number across.
[[nodiscard]] std::vector<Refused> why_nothing_fits(const plant::Plant& plant, const orders::Request& request,
                                                    const RouteNeeds& needs, const blanks::Blank& blank,
                                                    const std::vector<Route>& routes);

/// "2050 mm", "344.5 mm"; where the plant is shown us units, "87 1/2 in". To a thousandth, so that a length just beyond
/// its limit is not shown as the limit.
[[nodiscard]] inline std::string length_text(double length_mm, plant::Units units) {
    if (units == plant::Units::us) return base::exact_inches(length_mm / base::mm_of_inch) + " in";
    return fmt::format("{} mm", std::round(length_mm * 1000) / 1000);
}

}  // namespace flutebook::geometry
