// The blank of a slotted box by the formula, as somebody would write it who knew no other box.
#pragma once

#include "host/geometry/layout.hpp"
#include "host/orders/request.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::bench {

/// Of one box of the style `0201`, which a folder-gluer makes.
[[nodiscard]] geometry::MeasuredPiece plain_blank(const orders::InsideSize& inside, const plant::Allowance& allowance);

}  // namespace flutebook::bench
