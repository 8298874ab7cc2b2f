// The sections of a cost sheet, top to bottom. Each is text of its own: a heading, then lines that fit the page; the
// sums in it add up as printed.
#pragma once

#include <string>

#include "host/reports/sheet_context.hpp"
#include "host/services/quoting/quote.hpp"

namespace flutebook::reports {

/// How the box lies on the sheet and the sheet on the web.
[[nodiscard]] std::string layout_section(const SheetContext& enquiry, const services::Quote& quote);

/// Sheets and boxes, step by step: fed = spent on setup + rejected + good.
[[nodiscard]] std::string run_section(const SheetContext& enquiry, const services::Quote& quote);

/// Mass in and out by cause, and each as a share of the paper issued.
[[nodiscard]] std::string mass_section(const SheetContext& enquiry, const services::Quote& quote);

/// Every line, by class: quantity x rate = amount; down to the cost of the order.
[[nodiscard]] std::string cost_section(const SheetContext& enquiry, const services::Quote& quote);

/// The cost told for a thousand, an area and a mass; price and contribution.
[[nodiscard]] std::string price_section(const SheetContext& enquiry, const services::Quote& quote);

/// What the losses cost after ISO 14051, beside what recovery brings.
[[nodiscard]] std::string waste_section(const SheetContext& enquiry, const services::Quote& quote);

/// The ways that came next, and what they cost more.
[[nodiscard]] std::string runners_up_section(const SheetContext& enquiry, const services::Quote& quote);

}  // namespace flutebook::reports
