#include "host/geometry/blank.hpp"

#include <cassert>

#include "host/orders/style.hpp"

namespace flutebook::geometry {

using orders::InsideSize;
using orders::Outline;
using orders::Request;
using orders::Style;
using plant::Allowance;
using plant::Plant;

namespace {

constexpr double m2_per_mm2 = 1e-6;

// The first dimension of a sheet lies along the flutes, and so across the web.
Blank flat_sheet(const InsideSize& size) {
    return {.length_mm = size.width_mm,
            .width_mm = size.length_mm,
            .area_m2 = size.width_mm * size.length_mm * m2_per_mm2,
            .joint_mm = 0};
}

// Glue tab and four panels along the web; flap, body and flap across it. A slot parts every two flaps, three on each
// side; beside the tab there is the body alone, so the tab's share of both flaps is cut away.
Blank slotted_box(const InsideSize& inside, const Allowance& allowance) {
    const double body_mm = inside.height_mm + allowance.depth_mm;
    const double flap_mm = inside.width_mm / 2 + allowance.flap_mm;
    const double length_mm = allowance.tab_mm + 2 * (inside.length_mm + allowance.panel_mm) +
                             2 * (inside.width_mm + allowance.panel_mm) - allowance.joint_mm;
    const double width_mm = body_mm + 2 * flap_mm;
    const double cut_away_mm2 = 2 * allowance.tab_mm * flap_mm + 6 * allowance.slot_mm * flap_mm;
    return {.length_mm = length_mm,
            .width_mm = width_mm,
            .area_m2 = (length_mm * width_mm - cut_away_mm2) * m2_per_mm2,
            .joint_mm = body_mm};
}

Blank as_drawn(const Outline& outline) {
    return {.length_mm = outline.length_mm, .width_mm = outline.width_mm, .area_m2 = outline.area_m2, .joint_mm = 0};
}

}  // namespace

Blank make_blank(const Plant& plant, const Request& request) {
    const Style* style = orders::find_style(request.style);
    assert(style && "a request is read only in a style that is there");
    if (style->shape == Style::Shape::outline) return as_drawn(*request.outline);
    if (style->shape == Style::Shape::sheet) return flat_sheet(*request.inside);
    const Allowance* allowance = plant.find_allowance(plant.boards[request.board].flutes);
    assert(allowance && "a request is read only where its board has the allowances that its style needs");
    return slotted_box(*request.inside, *allowance);
}

}  // namespace flutebook::geometry
