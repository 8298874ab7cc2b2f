// The short answer to a request, with a row for each quantity: cost, price and profit; the weight of a box and the
// price per kilogram; and warnings.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "host/answers/quote_answer.hpp"
#include "host/render/report.hpp"
#include "host/reports/sheet_context.hpp"

namespace flutebook::reports {

/// One quantity that can be made, of boxes or of sets, as a page shows it: the order value less the cost is the profit,
/// as printed.
struct LadderRow {
    double quantity;
    Money price_per_thousand, order_value, cost, profit;  // cost and profit rounded to the currency's minor unit
    double profit_share;                                  // of the order value, before rounding
    double loss_kg, issued_kg;                            // waste is their quotient
    std::string made_on;                                  // "C1 > FG1"; of a set, piece by piece
};

/// Of the quantity at `index`; nothing where it cannot be made.
[[nodiscard]] std::optional<LadderRow> ladder_row(const SheetContext& context, const answers::RequestAnswer& answer,
                                                  std::size_t index);

/// The columns that stand behind the quantity, and a row's cells in them.
[[nodiscard]] std::vector<render::TableColumn> ladder_columns();
[[nodiscard]] std::vector<render::Cell> ladder_cells(const LadderRow& row, int minor_units);

/// A row a quantity; one that cannot be made says so. Rows link to the sheets of their quantities, which `ids` has.
[[nodiscard]] render::ReportSection ladder_section(const SheetContext& context, const answers::RequestAnswer& answer);

/// A row a quantity: what a kilogram and a square metre bring, and an hour of the machine that is busiest.
[[nodiscard]] render::ReportSection measure_section(const SheetContext& context, const answers::RequestAnswer& answer);

[[nodiscard]] render::ReportSection warnings_section(const std::vector<base::Warning>& warnings);

/// Where the sheet of a quantity stands.
[[nodiscard]] std::string sheet_id(double quantity);
[[nodiscard]] std::string sheet_id(double sets, const std::string& piece);

}  // namespace flutebook::reports
