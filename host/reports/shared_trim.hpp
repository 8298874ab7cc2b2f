// What a quote says where the order pays a share of its web: how much, and what it would cost alone.
#pragma once

#include <string>

#include "host/answers/quote_answer.hpp"
#include "host/render/report.hpp"
#include "host/reports/sheet_context.hpp"

namespace flutebook::reports {

/// "2.88 % of the board and 0.6 of an order change".
[[nodiscard]] std::string shared_trim_text(const answers::SharedTrim& trim);

/// The price of each quantity beside that of the same order alone.
[[nodiscard]] render::ReportSection shared_trim_section(const SheetContext& context,
                                                        const answers::RequestAnswer& answer);

}  // namespace flutebook::reports
