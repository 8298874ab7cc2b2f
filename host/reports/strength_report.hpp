// The estimated strength of a box in words, in the units that people are shown.
#pragma once

#include <string>

#include "host/answers/strength.hpp"
#include "host/plant/plant.hpp"
#include "host/reports/building.hpp"
#include "host/reports/sheet_context.hpp"

namespace flutebook::reports {

/// "2.50 kN", "562 lbf".
[[nodiscard]] std::string force_text(plant::Units units, double newtons);
/// "5.60 kN/m", "32.0 lbf/in".
[[nodiscard]] std::string edge_crush_text(plant::Units units, double kn_m);

/// The estimate with what it was reckoned from, and its caution.
[[nodiscard]] ReportSection strength_section(const SheetContext& context, const answers::Strength& strength);

}  // namespace flutebook::reports
