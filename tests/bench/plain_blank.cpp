#include "tests/bench/plain_blank.hpp"

#include "host/base/decimal.hpp"

namespace flutebook::bench {

geometry::MeasuredPiece plain_blank(const orders::InsideSize& inside, const plant::Allowance& allowance) {
    const double l = inside.length_mm + allowance.panel_mm, b = inside.width_mm + allowance.panel_mm;
    const double flap = inside.width_mm / 2 + allowance.flap_mm, height = inside.height_mm + allowance.depth_mm;
    const double body = 2 * l + 2 * b - allowance.joint_mm, slots = 6 * allowance.slot_mm * flap;
    const double length = allowance.tab_mm + body, width = height + 2 * flap;
    blanks::Blank blank{};
    blank.length_mm = base::short_decimal(length);
    blank.width_mm = base::short_decimal(width);
    blank.area_m2 = base::short_decimal(length * width - 2 * allowance.tab_mm * flap - slots) * 1e-6;
    blank.joint_mm = base::short_decimal(height);
    // Four panels are creased from one another and from the tab; eight flaps hang on what the slots leave of them.
    blank.crease_mm = 4 * height + 2 * (body - 3 * allowance.slot_mm);
    // Around the body, the tab and the flaps; along the flaps' sides, slots and all; the bottom of each slot.
    blank.cut_mm =
        2 * height + 2 * allowance.tab_mm + 16 * flap + 2 * (body - 3 * allowance.slot_mm) + 6 * allowance.slot_mm;
    blank.print_area_m2 = blank.area_m2 - allowance.tab_mm * height * 1e-6;
    return {{"", 1}, blank, {{{plant::Converter::Kind::folder_gluer}}, false}};
}

}  // namespace flutebook::bench
