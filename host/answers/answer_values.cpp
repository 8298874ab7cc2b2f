// What the answers say of themselves.
#include "host/answers/month_answer.hpp"
#include "host/answers/order_cost_answer.hpp"
#include "host/answers/plugin_answer.hpp"
#include "host/answers/quote_answer.hpp"
#include "host/answers/recheck_answer.hpp"

#include <algorithm>
#include <cmath>

#include "host/engine/facts.hpp"

namespace flutebook::answers {

namespace {

bool is_fact_of_host(const std::string& name) {
    const auto& facts = engine::facts();
    return std::any_of(facts.begin(), facts.end(), [&](const engine::Fact& fact) { return fact.name.name == name; });
}

}  // namespace

bool RequestAnswer::is_complete() const {
    return !model_fault && std::all_of(quantities.begin(), quantities.end(),
                                       [](const Quantity& quantity) { return quantity.quote.has_value(); });
}

std::optional<double> Difference::by() const {
    if (!was || !now || !was->number || !now->number) return std::nullopt;
    constexpr double billion = 1e9;
    const double exact = *now->number - *was->number;
    const double rounded = std::round(exact * billion) / billion;
    return std::isfinite(rounded) && rounded != 0 ? rounded : exact;
}

bool ChangedQuantity::differs() const {
    return was.has_value() != now.has_value() || !lines.empty() ||
           std::any_of(figures.begin(), figures.end(),
                       [](const Difference& figure) { return figure.was && figure.now; });
}

Money ChangedLine::by() const {
    return (now ? now->amount : Money()) - (was ? was->amount : Money());
}

Stages OrderCost::other_cost() const {
    Stages of_inputs;
    for (const auto& input : inputs) of_inputs += input.cost;
    return cost - of_inputs;
}

std::optional<double> MonthAnswer::recycling_rate_of_year() const {
    Grams sent, made;
    for (const auto& month : trend) {
        sent += month.sent;
        made += month.loose_scrap.in;
    }
    return month::share_of(sent, made);
}

bool DescribedModel::replaces_fact(const contract::Name& provided) const {
    return is_fact_of_host(provided.name);
}

bool DescribedModel::replaces(const contract::Name& name) const {
    const auto is_named = [&](const contract::Name& item) { return item.name == name.name; };
    return std::any_of(model.needs.begin(), model.needs.end(), is_named) &&
           std::any_of(model.provides.begin(), model.provides.end(), is_named);
}

std::size_t Checked::count(State state) const {
    return static_cast<std::size_t>(
        std::count_if(rules.begin(), rules.end(), [&](const CheckedRule& rule) { return rule.state == state; }));
}

}  // namespace flutebook::answers
