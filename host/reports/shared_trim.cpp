#include "host/reports/shared_trim.hpp"

#include <fmt/format.h>

#include "host/answers/line_changes.hpp"
#include "host/render/number_text.hpp"
#include "host/reports/building.hpp"

namespace flutebook::reports {

namespace {

using answers::RequestAnswer;

Money price_of(const RequestAnswer& answer, double quantity) {
    for (const RequestAnswer::Quantity& item : answer.quantities)
        if (const auto total = answers::total_of(item); total && item.quantity() == quantity)
            return total->price_per_thousand;
    return {};
}

}  // namespace

std::string shared_trim_text(const answers::SharedTrim& trim) {
    return fmt::format("{} % of the board and {} of an order change", render::brief_number(trim.share * 100, 4),
                       render::brief_number(trim.changes, 4));
}

ReportSection shared_trim_section(const SheetContext& context, const RequestAnswer& answer) {
    const int coins = context.plant.currency_minor_units;
    ReportTable table{"trim",
                      {number_column(context.pieces()), number_column("price a thousand", context.units.currency),
                       number_column("alone"), number_column("less"), number_column("own trim", "of the roll")}};
    for (const answers::SharedTrim::Alone& item : answer.trim->alone) {
        const Money price = price_of(answer, item.quantity);
        Cell alone, less;
        if (item.price_per_thousand) {
            alone = Amount{*item.price_per_thousand, coins};
            less = Amount{*item.price_per_thousand - price, coins};
        }
        table.add({Number{item.quantity, 0}, Amount{price, coins}, std::move(alone), std::move(less),
                   Percentage{item.own_share}});
    }
    return {"Trim shared: " + shared_trim_text(*answer.trim), {table}};
}

}  // namespace flutebook::reports
