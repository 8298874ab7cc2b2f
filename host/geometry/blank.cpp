// What the dimensions and allowances leave of a blank is checked here, since only here both come together: each may be
// fit by itself.
#include "host/geometry/blank.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>

#include "host/base/errors.hpp"
#include "host/base/quoted_text.hpp"
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

[[noreturn]] void refuse_measures(const Request& request, const char* measures, const std::string& why) {
    const std::string where = base::place_text(request.places, measures, request.place);
    throw InputError(InputError::Whose::request, {fmt::format("{}: {}: {}", where, measures, why)});
}

// What to change, and where the plant's files have it.
std::string remedy(const Allowance& allowance, const char* key, const char* keys) {
    return fmt::format("ask for a larger box, or lower {} of flute {} ({})", keys, base::shown(allowance.flutes),
                       base::place_text(allowance.places, key, {"flutes.yaml"}));
}

// Half a slot is cut from a flap on either side.
void check_slots(const Request& request, const Allowance& allowance) {
    const double panel_mm = std::min(request.inside->length_mm, request.inside->width_mm) + allowance.panel_mm;
    if (allowance.slot_mm < panel_mm) return;
    refuse_measures(request, "inside",
                    fmt::format("no flap is left between two slots: found slots of {} mm in a panel of {} mm; {}",
                                allowance.slot_mm, panel_mm, remedy(allowance, "slot", "`slot`")));
}

void check_rectangle(const Request& request, const Blank& blank, const Allowance& allowance) {
    if (blank.length_mm > 0 && blank.width_mm > 0) return;
    refuse_measures(request, "inside",
                    fmt::format("the blank has no size: found {} x {} mm; {}", blank.length_mm, blank.width_mm,
                                remedy(allowance, "joint", "`joint`")));
}

// An area of exactly the blank may be a hair larger in doubles.
bool is_area_within(const Blank& blank) {
    constexpr double hair = 1 + 1e-9;
    return blank.area_m2 > 0 && blank.area_m2 <= blank.length_mm * blank.width_mm * m2_per_mm2 * hair;
}

std::string area_fault(const Blank& blank) {
    return fmt::format("the box has no area within its blank: found {:.6g} m2 in {} x {} mm", blank.area_m2,
                       blank.length_mm, blank.width_mm);
}

Blank checked_slotted_box(const Request& request, const Allowance& allowance) {
    const Blank blank = slotted_box(*request.inside, allowance);
    check_slots(request, allowance);
    check_rectangle(request, blank, allowance);
    if (!is_area_within(blank))
        refuse_measures(request, "inside", area_fault(blank) + "; " + remedy(allowance, "tab", "`tab` and `slot`"));
    return blank;
}

// Measured by the request alone.
Blank checked_flat(const Request& request, const char* measures, const Blank& blank) {
    if (!is_area_within(blank)) refuse_measures(request, measures, area_fault(blank) + "; correct the measures");
    return blank;
}

Blank as_drawn(const Outline& outline) {
    return {.length_mm = outline.length_mm, .width_mm = outline.width_mm, .area_m2 = outline.area_m2, .joint_mm = 0};
}

}  // namespace

std::vector<BlankPiece> pieces_of(const Plant& /*plant*/, const Request& /*request*/) {
    return {{"", 1}};
}

Blank make_blank(const Plant& plant, const Request& request, [[maybe_unused]] std::size_t piece) {
    assert(piece == 0 && "every style is one piece");
    const Style* style = orders::find_style(request.style);
    assert(style && "a request is read only in a style that is there");
    if (style->shape == Style::Shape::outline) return checked_flat(request, "outline", as_drawn(*request.outline));
    if (style->shape == Style::Shape::sheet) return checked_flat(request, "inside", flat_sheet(*request.inside));
    const Allowance* allowance = plant.find_allowance(plant.boards[request.board].flutes);
    assert(allowance && "a request is read only where its board has the allowances that its style needs");
    return checked_slotted_box(request, *allowance);
}

}  // namespace flutebook::geometry
