#include "host/reports/price_rules.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "host/render/number_text.hpp"
#include "host/reports/labels.hpp"

namespace flutebook::reports {

namespace {

using answers::PriceRule;
using RuleKind = PriceRule::Kind;

constexpr int share_digits = 4;

std::string percent(double share) {
    return render::brief_number(share * 100, share_digits) + " %";
}

std::string rule_text(const SheetContext& context, const PriceRule& rule) {
    const auto amount = [&] { return render::number_text(rule.value, context.plant.currency_minor_units); };
    switch (rule.kind) {
        case RuleKind::request_margin:
            return fmt::format("margin {} by the request", percent(rule.value));
        case RuleKind::customer_margin:
            return fmt::format("margin {} of this customer", percent(rule.value));
        case RuleKind::quantity_margin:
            return fmt::format("margin {} by quantity", percent(rule.value));
        case RuleKind::round_up:
            return fmt::format("rounded up to {}", amount());
        case RuleKind::least_order:
            return fmt::format("raised to the least order of {}", amount());
    }
    return "";
}

const answers::PriceMaking* making_of(const answers::RequestAnswer::Quantity& quantity) {
    if (quantity.set) return &quantity.set->making;
    return quantity.quote ? &quantity.quote->making : nullptr;
}

// Quantities whose prices the same rules made.
struct RuledQuantities {
    std::vector<double> quantities;
    std::string rules;
};

std::vector<RuledQuantities> by_rules(const SheetContext& context, const answers::RequestAnswer& answer) {
    std::vector<RuledQuantities> result;
    for (const auto& quantity : answer.quantities) {
        const auto* making = making_of(quantity);
        if (making == nullptr || making->rules.empty()) continue;
        std::string text = rules_text(context, *making);
        const auto same = std::find_if(result.begin(), result.end(),
                                       [&](const RuledQuantities& other) { return other.rules == text; });
        if (same == result.end())
            result.push_back({{quantity.quantity()}, std::move(text)});
        else
            same->quantities.push_back(quantity.quantity());
    }
    return result;
}

}  // namespace

bool has_plant_rule(const answers::PriceMaking& making) {
    return std::any_of(making.rules.begin(), making.rules.end(),
                       [](const PriceRule& rule) { return rule.kind != RuleKind::request_margin; });
}

std::string rules_text(const SheetContext& context, const answers::PriceMaking& making) {
    std::string result;
    for (const PriceRule& rule : making.rules)
        result += fmt::format("{}{} ({})", result.empty() ? "" : "; ", rule_text(context, rule), rule.at);
    return result;
}

std::vector<std::string> price_rule_lines(const SheetContext& context, const answers::RequestAnswer& answer) {
    std::vector<std::string> result;
    const auto has_rule = [](const auto& quantity) {
        const auto* making = making_of(quantity);
        return making != nullptr && has_plant_rule(*making);
    };
    if (std::any_of(answer.quantities.begin(), answer.quantities.end(), has_rule))
        for (const RuledQuantities& item : by_rules(context, answer))
            result.push_back(fmt::format("{}: {}", listed_quantities(item.quantities), item.rules));
    if (answer.approval)
        result.push_back(fmt::format("approved by {}: the profit is below {} of the order value ({})",
                                     answer.approval->by, percent(answer.approval->below), answer.approval->at));
    return result;
}

ReportSection price_rules_section(const std::vector<std::string>& lines) {
    ReportSection section{"Rules of these prices"};
    for (const std::string& line : lines) section.blocks.emplace_back(Note{line, Note::Kind::sentence, 1});
    return section;
}

ReportSection second_currency_section(const SheetContext& context, const answers::RequestAnswer& answer) {
    ReportSection section;
    ReportTable table{
        "second currency",
        {number_column(context.pieces()), number_column(price_per_thousand_label), number_column(order_value_label)}};
    for (const auto& quantity : answer.quantities) {
        const auto* making = making_of(quantity);
        if (making == nullptr || !making->second) continue;
        const answers::SecondPrice& second = *making->second;
        section.title = fmt::format("In {}, {:g} for one {}", second.currency, second.rate, context.plant.currency);
        table.add({Number{quantity.quantity(), 0}, Amount{second.price_per_thousand, second.minor_units},
                   Amount{second.order_value, second.minor_units}});
    }
    section.blocks.emplace_back(std::move(table));
    return section;
}

Facts offer_facts(const answers::RequestAnswer& answer) {
    Facts facts;
    if (answer.terms.valid_until) facts.push_back({"valid until", {base::to_string(*answer.terms.valid_until)}});
    if (const auto& tolerance = answer.terms.tolerance)
        facts.push_back(
            {"quantity",
             {fmt::format("{} under to {} over is taken", percent(tolerance->under), percent(tolerance->over))}});
    return facts;
}

}  // namespace flutebook::reports
