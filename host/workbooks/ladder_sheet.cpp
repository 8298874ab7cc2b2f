#include "host/workbooks/ladder_sheet.hpp"

#include <fmt/format.h>

#include <cmath>

#include "host/base/place.hpp"

namespace flutebook::workbooks {

namespace {

using Look = render::BookCell::Look;
using PriceKind = answers::PriceRule::Kind;

// Rows of the sheet, from 1. Below "made by" stand the steps of a price that rules of the plant raise.
constexpr std::size_t by_margin_row = 9, rounded_row = 10, before_least_row = 11;

std::string add_rule(InputsSheet& inputs, const std::string& name, const std::optional<plant::PricingNumber>& rule,
                     const std::string& meaning) {
    if (!rule) return {};
    return InputsSheet::cell(
        inputs.add({name, "", rule->value, "money", "plant", meaning, base::place_text(rule->place)}));
}

class LadderMaker {
public:
    LadderMaker(const plant::Plant& plant, const answers::RequestAnswer& answer, const LadderInputs& inputs)
        : plant_(plant), answer_(answer), inputs_(inputs) {}

    render::BookSheet make(const std::vector<std::string>& costs) {
        add_labels();
        for (std::size_t i = 0; i < answer_.quantities.size(); ++i) {
            const auto& item = answer_.quantities[i];
            if (!item.is_makeable()) continue;
            sheet_.widths.push_back(18);
            item.quote ? add_column(*item.quote, i, costs[i]) : add_column(*item.set, i, costs[i]);
        }
        return std::move(sheet_);
    }

private:
    [[nodiscard]] bool has_rules() const { return !inputs_.round_up_to.empty() || !inputs_.least_order.empty(); }

    void add_labels() {
        sheet_ = {"Quote", {34}, {}};
        sheet_.rows = {heads({answer_.pieces.empty() ? "boxes" : "sets"}),
                       {said("cost " + plant_.currency)},
                       {said("cost per thousand")},
                       {said("price per thousand", Look::head)},
                       {said("order value")},
                       {said("profit")},
                       {said("margin, share of the price")},
                       {said("made by")}};
        if (!has_rules()) return;
        sheet_.rows.push_back({said("price by the margin")});
        sheet_.rows.push_back({said("price up to a multiple")});
        sheet_.rows.push_back({said("order value before the least order")});
    }

    template <typename QuoteOrSet>
    void add_column(const QuoteOrSet& quote, std::size_t index, const std::string& cost) {
        c_ = column_name(sheet_.rows[0].size());
        const auto add = [&](std::size_t row, render::BookCell cell) {
            sheet_.rows[row - 1].push_back(std::move(cell));
        };
        add(1, formula("=" + inputs_.quantities.at(index), quote.quantity, Look::head));
        add(2, formula(cost, quote.cost.to_double()));
        add(3, formula(fmt::format("={0}2/{0}1*1000", c_), quote.cost.to_double() / quote.quantity * 1000));
        add(4, formula("=" + (has_rules() ? least_order_price() : margin_price()), quote.price_per_thousand.to_double(),
                       Look::total));
        add(5, formula("=" + order_value(4), quote.sale.order_value.to_double()));
        add(6, formula(fmt::format("=ROUND({0}5-{0}2,4)", c_), quote.sale.profit.to_double()));
        add(7, margin_cell(quote.making));
        add(8, said(rules_text(quote.making)));
        if (has_rules()) add_rule_rows(quote.making, quote.quantity);
    }

    void add_rule_rows(const answers::PriceMaking& making, double quantity) {
        const double by_margin = making.rules.empty() ? 0 : making.rules.front().price_per_thousand.to_double();
        double rounded = by_margin;
        for (const answers::PriceRule& rule : making.rules)
            if (rule.kind == PriceKind::round_up) rounded = rule.price_per_thousand.to_double();
        sheet_.rows[by_margin_row - 1].push_back(formula("=" + margin_price(), by_margin));
        sheet_.rows[rounded_row - 1].push_back(formula("=" + rounded_price(), rounded));
        const Money value = Money::rounded(rounded * quantity / 1000, plant_.currency_minor_units).value_or(Money{});
        sheet_.rows[before_least_row - 1].push_back(formula("=" + order_value(rounded_row), value.to_double()));
    }

    [[nodiscard]] std::string margin_price() const {
        return fmt::format("ROUND({0}2/{0}1*1000/(1-{0}7)*(1+2E-15),{1})", c_, plant_.currency_minor_units);
    }

    [[nodiscard]] std::string order_value(std::size_t price_row) const {
        return fmt::format("ROUND({0}{1}*{0}1/1000*(1+2E-15),{2})", c_, price_row, plant_.currency_minor_units);
    }

    // Counted in ten-thousandths, so that a price that is a multiple stays what it is.
    [[nodiscard]] std::string rounded_price() const {
        const std::string price = fmt::format("{}{}", c_, by_margin_row), multiple = inputs_.round_up_to;
        if (multiple.empty()) return price;
        const std::string times = whole_up(fmt::format("ROUND({}*10000,0)/ROUND({}*10000,0)", price, multiple));
        return fmt::format("ROUND({}*{},4)", times, multiple);
    }

    // The least price in coins that brings the least order, where the order brings less.
    [[nodiscard]] std::string least_order_price() const {
        const std::string price = fmt::format("{}{}", c_, rounded_row), least = inputs_.least_order;
        if (least.empty()) return price;
        const double coins = std::pow(10, plant_.currency_minor_units);
        const std::string raised =
            fmt::format("{}/{:.0f}", whole_up(fmt::format("ROUND({}*{:.0f},0)*1000/{}1", least, coins, c_)), coins);
        return fmt::format("IF({}{}<{},MAX({},{}),{})", c_, before_least_row, least, price, raised, price);
    }

    [[nodiscard]] render::BookCell margin_cell(const answers::PriceMaking& making) const {
        if (!inputs_.margin.empty()) return formula("=" + inputs_.margin, *answer_.request.margin);
        return {making.rules.empty() ? 0 : making.rules.front().value, Look::input};
    }

    static std::string rules_text(const answers::PriceMaking& making) {
        std::string result;
        for (const answers::PriceRule& rule : making.rules)
            result += fmt::format("{}{} {} ({})", result.empty() ? "" : "; ", answers::to_text(rule.kind), rule.value,
                                  rule.at);
        return result;
    }

    const plant::Plant& plant_;
    const answers::RequestAnswer& answer_;
    const LadderInputs& inputs_;
    render::BookSheet sheet_;
    std::string c_;  // the column that is being made
};

}  // namespace

LadderInputs add_ladder_inputs(const plant::Plant& plant, const answers::RequestAnswer& answer, InputsSheet& inputs) {
    const orders::Request& request = answer.request;
    LadderInputs result;
    if (request.margin)
        result.margin =
            InputsSheet::cell(inputs.add({"margin", "", *request.margin, "1", "request", "share of the price",
                                          base::place_text(request.places, "margin", request.place)}));
    else
        inputs.add({"margin", "", std::nullopt, "1", "plant",
                    "by the plant's rules, for each quantity in the sheet Quote", ""});
    for (const double quantity : request.quantities)
        result.quantities.push_back(
            InputsSheet::cell(inputs.add({"quantity", "", quantity, "1", "request", "asked for",
                                          base::place_text(request.places, "quantities", request.place)})));
    result.round_up_to = add_rule(inputs, "pricing.round_up_to", plant.pricing.round_up_to,
                                  "prices per thousand are whole multiples of it");
    result.least_order = add_rule(inputs, "pricing.least_order", plant.pricing.least_order, "no order brings less");
    return result;
}

render::BookSheet ladder_sheet(const plant::Plant& plant, const answers::RequestAnswer& answer,
                               const LadderInputs& inputs, const std::vector<std::string>& costs) {
    return LadderMaker(plant, answer, inputs).make(costs);
}

}  // namespace flutebook::workbooks
