// A way of making that is asked for: only this way is costed; if it is impossible, the limits are reported.
#pragma once

#include <cstddef>

#include "host/answers/quote_answer.hpp"
#include "host/geometry/layout.hpp"
#include "host/orders/request.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::quoting {

/// Throws InputError (request) where the plant has no such corrugator.
void expect_way(const plant::Plant& plant, const answers::ForcedWay& way);

/// Keeps the candidates that are of this way. `layout` is that of a piece of the request.
[[nodiscard]] geometry::Layout narrowed_to(const answers::ForcedWay& way, const plant::Plant& plant,
                                           const orders::Request& request, std::size_t piece, geometry::Layout layout);

}  // namespace flutebook::quoting
