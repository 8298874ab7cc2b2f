// One box laid flat: its outer rectangle and the area of board that stays box.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "host/orders/request.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::geometry {

/// One box laid flat. Its width runs along the flutes, across the web. It is never turned.
struct Blank {
    double length_mm, width_mm, area_m2;
    double joint_mm;  // length of the maker's joint, 0 if none
};

/// One blank of a style: what it is called, and how many of it make one box.
struct BlankPiece {
    std::string name;  // empty: the style is one piece
    double count;
};

/// The blanks that the request's style is made of, in the order of the style; one without a name where it is one piece.
/// Throws InputError (request) as make_blank() does.
[[nodiscard]] std::vector<BlankPiece> pieces_of(const plant::Plant& plant, const orders::Request& request);

/// By the style: a sheet as asked (the first dimension lies along the flutes), a slotted box by its inside dimensions
/// and the allowances of the board's flutes, an outline as the customer's drawing gives it. Throws InputError (request)
/// where they leave no box: slots as wide as the panels that they stand in, a net area that is not above 0 or larger
/// than the blank. `piece` is an index of pieces_of().
[[nodiscard]] Blank make_blank(const plant::Plant& plant, const orders::Request& request, std::size_t piece = 0);

}  // namespace flutebook::geometry
