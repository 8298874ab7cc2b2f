// The parts are rounded so that they add up to the cost that is shown; the profit is what is left of the price.
#include "host/lists/item_price.hpp"

#include <fmt/format.h>

#include "host/answers/made_on.hpp"
#include "host/base/parts.hpp"

namespace flutebook::lists {

namespace {

using answers::ItemPrice;
using answers::PriceParts;

constexpr int money_decimals = 4;

void add_lines(engine::ClassCosts& sum, const answers::Quote& quote) {
    for (const answers::CostLine& line : quote.lines) sum[static_cast<std::size_t>(line.cost_class)] += line.amount;
}

void add_way(ItemPrice& price, const answers::Quote& quote) {
    const char* between = price.made_on.empty() ? "" : "; ";
    price.made_on += between + answers::route_text(quote);
    price.roll_width += fmt::format("{}{}", between, quote.roll_width_mm);
}

}  // namespace

PriceParts parts_of_price(const engine::ClassCosts& order, double quantity, Money cost_per_thousand, Money price) {
    PriceParts result{price, cost_per_thousand, {}, price - cost_per_thousand};
    std::vector<double> parts;
    for (const Money amount : order) parts.push_back(amount.to_double() / quantity * 1000);
    const auto whole = base::parts_of(cost_per_thousand.ten_thousandths(), parts, money_decimals);
    for (std::size_t c = 0; c < whole.size(); ++c) result.by_class[c] = Money::of_ten_thousandths(whole[c]);
    return result;
}

ItemPrice price_of(const answers::RequestAnswer& answer) {
    const answers::RequestAnswer::Quantity& item = answer.quantities.front();
    engine::ClassCosts costs{};
    ItemPrice result{};
    if (item.quote) {
        add_lines(costs, *item.quote);
        add_way(result, *item.quote);
        static_cast<PriceParts&>(result) =
            parts_of_price(costs, item.quote->quantity, item.quote->cost_per_thousand, item.quote->price_per_thousand);
    } else {
        for (const answers::RequestAnswer::Piece& piece : answer.pieces) {
            add_lines(costs, *piece.quantities.front().quote);
            add_way(result, *piece.quantities.front().quote);
        }
        static_cast<PriceParts&>(result) =
            parts_of_price(costs, item.set->quantity, item.set->cost_per_thousand, item.set->price_per_thousand);
    }
    result.making = item.quote ? item.quote->making : item.set->making;
    result.order_value = item.quote ? item.quote->sale.order_value : item.set->sale.order_value;
    const auto& missing = item.quote ? item.quote->not_in_price : item.set->not_in_price;
    if (missing) result.not_in_price = *missing;
    return result;
}

}  // namespace flutebook::lists
