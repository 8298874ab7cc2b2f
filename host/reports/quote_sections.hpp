// The sections of one quantity's cost sheet. The sums in them add up as they are shown.
#pragma once

#include <vector>

#include "host/answers/quote_answer.hpp"
#include "host/render/report.hpp"
#include "host/reports/sheet_context.hpp"

namespace flutebook::reports {

/// Top to bottom: how the box lies on the sheet and the sheet on the web; sheets and boxes, step by step (fed = spent
/// on setup + rejected + good); mass in and out by cause, with shares of the paper issued; every line of the cost by
/// class; price and contribution; what losses cost after ISO 14051; the ways that came next.
[[nodiscard]] std::vector<render::ReportSection> sheet_sections(const SheetContext& context,
                                                                const answers::Quote& quote);

}  // namespace flutebook::reports
