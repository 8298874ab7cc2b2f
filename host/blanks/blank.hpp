// One box laid flat: its outer rectangle, its net area, and its lengths and areas of cut, crease, joint and print.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "host/blanks/flat.hpp"
#include "host/blanks/flat_measures.hpp"
#include "host/orders/request.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::blanks {

/// One box laid flat. Its width runs along the flutes, across the web. It is never turned.
struct Blank {
    double length_mm, width_mm, area_m2;
    double joint_mm;                   // length of the maker's joint, 0 if none
    double cut_mm = 0, crease_mm = 0;  // 0 of an outline, whose drawing the customer has
    double print_area_m2 = 0;          // the face that may be printed
    Scores scores = {};
};

/// One blank of a style: what it is called, and how many of it make one box.
struct BlankPiece {
    std::string name;  // empty: the style is one piece
    double count;
};

/// The blanks that the request's style is made of, in the order of the style; one without a name where one blank makes
/// one box. Where several of one blank do, it is named even if the style does not.
/// Throws InputError (request) as make_blank() does.
[[nodiscard]] std::vector<BlankPiece> pieces_of(const plant::Plant& plant, const orders::Request& request);

/// The request's inside dimensions, or what its outside dimensions leave within the walls of its style. Throws
/// InputError (request) where they leave nothing, or where the walls of the style are not known.
[[nodiscard]] orders::InsideSize inside_of(const plant::Plant& plant, const orders::Request& request);

/// The request's style at the request's size: what make_blank() measures, the drawing shows and the proof folds. None
/// of an outline. Throws InputError (request) where the size leaves no blank, as draw_flat() does.
[[nodiscard]] std::vector<FlatBlank> draw_request(const plant::Plant& plant, const orders::Request& request);

/// The drawn blank's figures; of an outline, what the customer's drawing gives. Throws InputError (request) where they
/// leave no box. `piece` is an index of pieces_of().
[[nodiscard]] Blank make_blank(const plant::Plant& plant, const orders::Request& request, std::size_t piece = 0);

}  // namespace flutebook::blanks
