// Checks a blank when it is drawn: dimensions and allowances may each be valid, and leave no blank together.
#include "host/blanks/blank.hpp"

#include <fmt/format.h>

#include <cassert>

#include "host/base/decimal.hpp"
#include "host/base/errors.hpp"
#include "host/blanks/proof.hpp"

namespace flutebook::blanks {

using orders::Outline;
using orders::Request;
using plant::Plant;

namespace {

constexpr double m2_per_mm2 = 1e-6;

const box_styles::Style& style_of(const Plant& plant, const Request& request) {
    const box_styles::Style* style = plant.find_style(request.style);
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

std::vector<FlatBlank> draw_at(const Plant& plant, const Request& request, const orders::InsideSize& inside) {
    const plant::Board& board = plant.boards[request.board];
    StyleSize size{};
    size.inside_mm = {inside.length_mm, inside.width_mm, inside.height_mm};
    size.caliper_mm = plant::caliper_mm(plant, board);
    size.allowance = plant.find_allowance(board.flutes, request.style);
    size.measures = request.measures;
    size.is_turned = request.is_turned;
    const char* given = request.outside ? "outside" : "inside";
    size.where = base::place_text(request.places, given, request.place) + ": " + given;
    return draw_flat(style_of(plant, request), size);
}

[[noreturn]] void refuse_outside(const Request& request, const char* found) {
    throw InputError(InputError::Whose::request,
                     {fmt::format("{}: outside: cannot be turned into inside dimensions: found {}; give `inside`",
                                  base::place_text(request.places, "outside", request.place), found)});
}

}  // namespace

orders::InsideSize inside_of(const Plant& plant, const Request& request) {
    if (request.inside) return *request.inside;
    const orders::InsideSize& outside = *request.outside;
    // Walls hardly depend on the size: what they take of one a little too large is what they take of the right one.
    orders::InsideSize inside = outside;
    constexpr int rounds = 3;
    for (int round = 0; round < rounds; ++round) {
        const std::vector<FlatBlank> blanks = draw_at(plant, request, inside);
        if (blanks.size() != 1) refuse_outside(request, "a style of several pieces");
        const auto walls_mm = folded_walls_mm(blanks.front());
        if (!walls_mm[0] || !walls_mm[1] || (style_of(plant, request).uses_height && !walls_mm[2]))
            refuse_outside(request, "a style whose walls are not known");
        inside = {base::short_decimal(outside.length_mm - *walls_mm[0]),
                  base::short_decimal(outside.width_mm - *walls_mm[1]),
                  base::short_decimal(outside.height_mm - walls_mm[2].value_or(0))};
        if (!(inside.length_mm > 0) || !(inside.width_mm > 0) || inside.height_mm < 0)
            refuse_outside(request, "walls thicker than the box");
    }
    return inside;
}

std::vector<FlatBlank> draw_request(const Plant& plant, const Request& request) {
    if (style_of(plant, request).is_outline) return {};
    return draw_at(plant, request, inside_of(plant, request));
}

std::vector<BlankPiece> pieces_of(const Plant& plant, const Request& request) {
    const box_styles::Style& style = style_of(plant, request);
    // A count is a sum of the request's size; most styles have none.
    if (style.is_outline || (style.pieces.size() == 1 && !style.pieces.front().count)) return {{"", 1}};
    std::vector<BlankPiece> pieces;
    for (const FlatBlank& blank : draw_request(plant, request))
        pieces.push_back({blank.piece.empty() ? "piece" : blank.piece, blank.count});
    return pieces;
}

Blank make_blank(const Plant& plant, const Request& request, std::size_t piece) {
    if (style_of(plant, request).is_outline) return as_outlined(request);
    return as_drawn(draw_request(plant, request).at(piece));
}

}  // namespace flutebook::blanks
