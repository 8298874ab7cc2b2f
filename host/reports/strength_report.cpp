#include "host/reports/strength_report.hpp"

#include <fmt/format.h>

#include "host/render/number_text.hpp"

namespace flutebook::reports {

namespace {

// The pound of force: 0.45359237 kg x 9.80665 m/s2 (ISO 80000-4 has both numbers; from memory).
constexpr double newtons_in_lbf = 0.45359237 * 9.80665;
constexpr double mm_in_inch = 25.4;

constexpr const char* caution =
    "an estimate for a dry box, pressed evenly and briefly: moisture, time, the pallet's edge and print reduce it "
    "considerably";
constexpr const char* low_caution = "the box is lower than a seventh of its perimeter, where the formula does not hold";

}  // namespace

std::string force_text(plant::Units units, double newtons) {
    return units == plant::Units::us ? render::number_text(newtons / newtons_in_lbf, 0) + " lbf"
                                     : render::number_text(newtons / 1000, 2) + " kN";
}

// A kN/m is a N/mm.
std::string edge_crush_text(plant::Units units, double kn_m) {
    return units == plant::Units::us ? render::number_text(kn_m * mm_in_inch / newtons_in_lbf, 1) + " lbf/in"
                                     : render::number_text(kn_m, 2) + " kN/m";
}

ReportSection strength_section(const SheetContext& context, const answers::Strength& strength) {
    const plant::Units units = context.plant.units;
    ReportSection section{fmt::format("Strength: about {} from above", force_text(units, strength.newtons))};
    section.blocks.emplace_back(
        Note{fmt::format("by McKee's simplified formula (1963) from ECT {} ({}), caliper {} and a perimeter of {}",
                         edge_crush_text(units, strength.ect_kn_m), strength.at,
                         context.units.length(strength.caliper_mm), context.units.length(strength.perimeter_mm)),
             Note::Kind::sentence, 1});
    section.blocks.emplace_back(Note{caution, Note::Kind::sentence, 1});
    if (strength.is_too_low()) section.blocks.emplace_back(Note{low_caution, Note::Kind::warning, 1});
    return section;
}

}  // namespace flutebook::reports
