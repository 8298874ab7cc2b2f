// The sections of one quantity's cost sheet, whose sums add up as they are shown, and one line of it followed down to
// the settings and facts that it was calculated from.
#pragma once

#include <string>
#include <vector>

#include "host/answers/quote_answer.hpp"
#include "host/drawings/shown_units.hpp"
#include "host/render/report.hpp"
#include "host/reports/sheet_context.hpp"

namespace flutebook::reports {

/// Top to bottom: how the box lies on the sheet and the sheet on the web; sheets and boxes, step by step (fed = spent
/// on setup + rejected + good); mass in and out by cause, with shares of the paper issued; every line of the cost by
/// class; price and contribution; what losses cost after ISO 14051; the ways that came next.
[[nodiscard]] std::vector<render::ReportSection> sheet_sections(const SheetContext& context,
                                                                const answers::Quote& quote);

/// The same one by one, for a page that sets them in places of its own. Rows name the figure that they show.
struct SheetSections {
    render::ReportSection layout, run, mass, cost, price, waste, runners_up;
};
[[nodiscard]] SheetSections sheet_sections_by_name(const SheetContext& context, const answers::Quote& quote);

/// A walk for each place of `figure`, which may name a quantity behind it (`price@500`): figure, value and unit, where
/// it holds, the model that gives it, its meaning, the place it was written. What stands behind a figure is indented
/// below it; a figure shown before is referred to by its number. Says so where it is nothing in this quote.
[[nodiscard]] render::ReportSection explain_section(const drawings::ShownUnits& units, const std::string& figure,
                                                    const answers::Quote& quote);

}  // namespace flutebook::reports
