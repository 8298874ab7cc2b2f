// What the dimensions and allowances leave of a blank is checked where it is drawn, since only there both come
// together: each may be fit by itself.
#include "host/geometry/blank.hpp"

#include <fmt/format.h>

#include <cassert>

#include "host/base/decimal.hpp"
#include "host/base/errors.hpp"
#include "host/geometry/board.hpp"

namespace flutebook::geometry {

using orders::Outline;
using orders::Request;
using plant::Plant;

namespace {

constexpr double m2_per_mm2 = 1e-6;

const plant::Style& style_of(const Plant& plant, const Request& request) {
    const plant::Style* style = plant.find_style(request.style);
    assert(style && "a request is read only in a style that is there");
    return *style;
}

// An area of exactly the blank may be a hair larger in doubles.
bool is_area_within(const Outline& outline) {
    constexpr double hair = 1 + 1e-9;
    return outline.area_m2 > 0 && outline.area_m2 <= outline.length_mm * outline.width_mm * m2_per_mm2 * hair;
}

Blank as_outlined(const Request& request) {
    const Outline& outline = *request.outline;
    if (!is_area_within(outline))
        throw InputError(
            InputError::Whose::request,
            {fmt::format(
                "{}: outline: the box has no area within its blank: found {:.6g} m2 in {} x {} mm; correct the "
                "measures",
                base::place_text(request.places, "outline", request.place), outline.area_m2, outline.length_mm,
                outline.width_mm)});
    Blank blank{};
    blank.length_mm = outline.length_mm;
    blank.width_mm = outline.width_mm;
    blank.area_m2 = blank.print_area_m2 = outline.area_m2;
    return blank;
}

Blank as_drawn(const FlatBlank& flat) {
    FlatMeasures measures = measure(flat);
    // Sums of decimals are decimals again: 1473.4, not 1473.3999999999999.
    return {.length_mm = base::short_decimal(flat.length_mm),
            .width_mm = base::short_decimal(flat.width_mm),
            .area_m2 = base::short_decimal(measures.area_mm2) * m2_per_mm2,
            .joint_mm = base::short_decimal(measures.joint_mm),
            .cut_mm = measures.cut_mm,
            .crease_mm = measures.crease_mm,
            .print_area_m2 = measures.print_area_mm2 * m2_per_mm2,
            .scores = std::move(measures.scores)};
}

}  // namespace

std::vector<FlatBlank> draw_request(const Plant& plant, const Request& request) {
    const plant::Style& style = style_of(plant, request);
    if (style.is_outline) return {};
    const plant::Board& board = plant.boards[request.board];
    StyleSize size{};
    size.inside_mm = {request.inside->length_mm, request.inside->width_mm, request.inside->height_mm};
    size.caliper_mm = make_board(plant, request).caliper_mm;
    size.allowance = plant.find_allowance(board.flutes);
    size.measures = request.measures;
    size.is_turned = request.is_turned;
    const char* given = request.outside ? "outside" : "inside";
    size.where = base::place_text(request.places, given, request.place) + ": " + given;
    return draw_flat(style, size);
}

std::vector<BlankPiece> pieces_of(const Plant& plant, const Request& request) {
    const plant::Style& style = style_of(plant, request);
    // A count is a sum of the request's size; most styles have none.
    if (style.is_outline || (style.pieces.size() == 1 && !style.pieces.front().count)) return {{"", 1}};
    std::vector<BlankPiece> pieces;
    for (const FlatBlank& blank : draw_request(plant, request)) pieces.push_back({blank.piece, blank.count});
    return pieces;
}

Blank make_blank(const Plant& plant, const Request& request, std::size_t piece) {
    if (style_of(plant, request).is_outline) return as_outlined(request);
    return as_drawn(draw_request(plant, request).at(piece));
}

}  // namespace flutebook::geometry
