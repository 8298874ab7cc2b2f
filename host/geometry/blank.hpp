// One box laid flat: its outer rectangle and the area of board that stays box.
#pragma once

#include "host/orders/request.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::geometry {

/// One box laid flat. Its width runs along the flutes, across the web. It is never turned.
struct Blank {
    double length_mm, width_mm, area_m2;
    double joint_mm;  // length of the maker's joint, 0 if none
};

/// By the style: a sheet as asked (the first dimension lies along the flutes), a slotted box by its inside dimensions
/// and the allowances of the board's flutes, an outline as the customer's drawing gives it. Throws InputError (request)
/// where they leave no box: slots as wide as the panels that they stand in, a net area that is not above 0 or larger
/// than the blank.
[[nodiscard]] Blank make_blank(const plant::Plant& plant, const orders::Request& request);

}  // namespace flutebook::geometry
