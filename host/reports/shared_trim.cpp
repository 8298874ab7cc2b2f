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

std::string shared_trim_text(const plant::TrimPolicy& policy) {
    return fmt::format("{} % of the board and {} of an order change",
                       render::brief_number(policy.share.value_or(0) * 100, 4),
                       render::brief_number(policy.changes, 4));
}

std::string trim_origin_text(const plant::TrimPolicy& policy) {
    if (!policy.origin) return "";
    const plant::TrimOrigin& origin = *policy.origin;
    const std::string months = fmt::format("{} to {}", plant::month_text(origin.first), plant::month_text(origin.last));
    if (!origin.record)
        return fmt::format(
            "the plant's own numbers: from {} the ledger has {} runs of {} and {} of the plant, and {} "
            "of either were needed",
            months, origin.board_runs, origin.board, origin.plant_runs, plant::enough_runs);
    const plant::TrimRecord& record = *origin.record;
    const bool is_own = origin.of == plant::TrimOrigin::Of::board;
    const std::string beside =
        is_own ? ""
               : fmt::format(" (of {} alone {}, fewer than {})", origin.board, origin.board_runs, plant::enough_runs);
    return fmt::format(
        "counted from {} runs of {} for {} orders{}, {}: {:.0f} kg of side trim in {:.0f} kg of board, "
        "and {} order changes",
        record.runs, is_own ? origin.board : "the plant", record.orders, beside, months, record.side_trim.to_kg(),
        record.board.to_kg(), render::brief_number(record.changes, 2));
}

ReportSection shared_trim_section(const SheetContext& context, const RequestAnswer& answer) {
    const int coins = context.plant.currency_minor_units;
    ReportTable table{"trim",
                      {number_column(context.pieces()), number_column("price a thousand", context.units.currency),
                       number_column("alone"), number_column("less"), number_column("own trim", "of the roll")}};
    for (const trim_answers::SharedTrim::Alone& item : answer.trim->alone) {
        const Money price = price_of(answer, item.quantity);
        Cell alone, less;
        if (item.price_per_thousand) {
            alone = Amount{*item.price_per_thousand, coins};
            less = Amount{*item.price_per_thousand - price, coins};
        }
        table.add({Number{item.quantity, 0}, Amount{price, coins}, std::move(alone), std::move(less),
                   Percentage{item.own_share}});
    }
    ReportSection section{"Trim shared: " + shared_trim_text(answer.trim->policy), {table}};
    if (std::string origin = trim_origin_text(answer.trim->policy); !origin.empty())
        section.blocks.emplace_back(Note{std::move(origin), Note::Kind::sentence, 1});
    return section;
}

}  // namespace flutebook::reports
