// The facts shown where an order pays a share of its web: how much, where that was counted, and what it would cost
// alone.
#pragma once

#include <string>

#include "host/answers/quote_answer.hpp"
#include "host/render/report.hpp"
#include "host/reports/sheet_context.hpp"

namespace flutebook::reports {

/// "2.88 % of the board and 0.6 of an order change".
[[nodiscard]] std::string shared_trim_text(const plant::TrimPolicy& policy);

/// "counted from 41 runs of B-140 for 17 orders, 2025-10 to 2026-09: …": which figures; empty where the request gave
/// the numbers.
[[nodiscard]] std::string trim_origin_text(const plant::TrimPolicy& policy);

/// The price of each quantity beside that of the same order alone.
[[nodiscard]] render::ReportSection shared_trim_section(const SheetContext& context,
                                                        const answers::RequestAnswer& answer);

}  // namespace flutebook::reports
