// One line of the cost sheet, followed down to the settings and facts that it was calculated from.
#pragma once

#include <string>

#include "host/answers/quote_answer.hpp"
#include "host/render/report.hpp"
#include "host/reports/shown_units.hpp"

namespace flutebook::reports {

/// A walk for each amount of `line`: figure, value and unit, where it holds, the model that gives it, its meaning, the
/// place it was written. What stands behind a figure is indented below it; a figure shown before is referred to by its
/// number. Says so where the line charges nothing in this quote.
[[nodiscard]] render::ReportSection explain_section(const ShownUnits& units, const std::string& line,
                                                    const answers::Quote& quote);

}  // namespace flutebook::reports
