// What a price leaves out, as text: the line, the number that the request does not give, and what is invoiced apart.
#pragma once

#include <string>
#include <vector>

#include "host/answers/quote_answer.hpp"
#include "host/render/report.hpp"
#include "host/reports/sheet_context.hpp"

namespace flutebook::reports {

/// "ink: `coverage` not given; 4 colours are printed (consumables: share of the sheet that each colour covers)".
[[nodiscard]] std::string missing_text(const SheetContext& context, const answers::NotInPrice& item);

/// Of all quantities that can be made; what holds for some says for which: "at 500 and 1 000: ...".
[[nodiscard]] std::vector<std::string> missing_texts(const SheetContext& context, const answers::RequestAnswer& answer);

/// Without blocks where nothing is missing.
[[nodiscard]] render::ReportSection not_in_price_section(const std::vector<std::string>& texts);

}  // namespace flutebook::reports
