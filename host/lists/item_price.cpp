// The parts are rounded so that they add up to the cost that is shown; the profit is what is left of the price.
#include "host/lists/item_price.hpp"

#include <fmt/format.h>

#include "host/base/errors.hpp"
#include "host/base/parts.hpp"

namespace flutebook::lists {

namespace {

constexpr int money_decimals = 4;

void add_lines(engine::ClassCosts& sum, const answers::Quote& quote) {
    for (const answers::CostLine& line : quote.lines) sum[static_cast<std::size_t>(line.cost_class)] += line.amount;
}

void add_way(ItemPrice& price, const answers::Quote& quote) {
    const char* between = price.made_on.empty() ? "" : "; ";
    price.made_on += between + quote.corrugator;
    for (const std::string& machine : quote.route) price.made_on += " > " + machine;
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

std::optional<Money> order_value(const plant::Plant& plant, Money price, double quantity) {
    return Money::rounded(price.to_double() * quantity / 1000, plant.currency_minor_units);
}

ItemPrice price_of(const plant::Plant& plant, const answers::RequestAnswer& answer) {
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
    const auto value = order_value(plant, result.price, item.quantity());
    if (!value)
        throw InputError(
            InputError::Whose::request,
            {fmt::format("{}: request {} at {:.0f}: the order value is too large to be kept, where no "
                         "amount may reach {:g}; ask for fewer",
                         base::place_text(answer.request.place), answer.request.number, item.quantity(), Money::most)});
    result.order_value = *value;
    return result;
}

}  // namespace flutebook::lists
