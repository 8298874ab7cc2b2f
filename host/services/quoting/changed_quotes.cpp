#include "host/services/quoting/changed_quotes.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "host/answers/figures.hpp"
#include "host/services/quoting/differences.hpp"

namespace flutebook::services {

namespace {

using answers::ChangedLine;
using Quantity = answers::RequestAnswer::Quantity;

std::optional<answers::Total> total_of(const Quantity& answered) {
    if (!answered.quote) return std::nullopt;
    return answers::Total{answered.quote->cost, answered.quote->cost_per_thousand, answered.quote->price_per_thousand};
}

std::vector<answers::Leaf> figures_in(const Quantity& answered) {
    return answered.quote ? answers::figures_of(*answered.quote) : answers::figures_of(*answered.unmakeable);
}

std::string machine_of(const answers::Quote& quote, std::size_t step) {
    if (step == 0) return quote.corrugator;
    return step <= quote.route.size() ? quote.route[step - 1] : "dispatch";
}

struct CostKey {
    std::string key;   // the same then and today, however many machines stand before dispatch
    ChangedLine line;  // its figures as `now`
};

std::vector<CostKey> lines_of(const answers::Quote& quote) {
    std::vector<CostKey> result;
    for (const answers::CostLine& cost : quote.lines) {
        ChangedLine line{cost.plugin, cost.line, cost.step, cost.ply, std::nullopt, std::nullopt};
        const std::string machine = machine_of(quote, cost.step);
        const std::string place = machine == "dispatch" ? machine : std::to_string(cost.step);
        const std::string ply = cost.ply ? std::to_string(*cost.ply) : "";
        line.now = {machine, cost.quantity, cost.rate, cost.unit, cost.amount};
        result.push_back({fmt::format("{} {} {} {}", cost.plugin, cost.line, place, ply), std::move(line)});
    }
    return result;
}

bool is_same(const ChangedLine::Figures& was, const ChangedLine::Figures& now) {
    return was.quantity == now.quantity && was.rate == now.rate && was.unit == now.unit && was.amount == now.amount;
}

std::vector<ChangedLine> changed_lines(const answers::Quote& was, const answers::Quote& now) {
    std::vector<CostKey> then = lines_of(was);
    std::vector<ChangedLine> result;
    for (CostKey& cost_key : lines_of(now)) {
        const auto before =
            std::find_if(then.begin(), then.end(), [&](const CostKey& line) { return line.key == cost_key.key; });
        if (before != then.end()) {
            cost_key.line.was = before->line.now;
            then.erase(before);
        }
        if (!cost_key.line.was || !is_same(*cost_key.line.was, *cost_key.line.now))
            result.push_back(std::move(cost_key.line));
    }
    for (CostKey& gone : then) {
        gone.line.was = std::exchange(gone.line.now, std::nullopt);
        result.push_back(std::move(gone.line));
    }
    return result;
}

std::vector<std::string> limits_of(const answers::Unmakeable& unmakeable) {
    std::vector<std::string> result;
    for (const geometry::Refused& way : unmakeable.refused) result.push_back(way.candidate + ": " + way.limit);
    return result;
}

answers::ChangedQuantity changed_quantity(const Quantity& was, const Quantity* now) {
    const double quantity = was.quote ? was.quote->quantity : was.unmakeable->quantity;
    answers::ChangedQuantity result{quantity, total_of(was), std::nullopt, {}, {}, {}};
    if (now == nullptr) return result;
    result.now = total_of(*now);
    if (was.quote.has_value() == now->quote.has_value())
        result.figures = differences(figures_in(was), figures_in(*now));
    if (was.quote && now->quote) result.lines = changed_lines(*was.quote, *now->quote);
    if (was.quote && now->unmakeable) result.limits = limits_of(*now->unmakeable);
    return result;
}

}  // namespace

std::vector<answers::ChangedQuantity> changed_quantities(const answers::RequestAnswer& was,
                                                         const answers::RequestAnswer* now) {
    std::vector<answers::ChangedQuantity> result;
    for (std::size_t i = 0; i < was.quantities.size(); ++i)
        result.push_back(changed_quantity(was.quantities[i], now == nullptr ? nullptr : &now->quantities.at(i)));
    return result;
}

std::vector<std::optional<answers::Total>> totals_of(const answers::RequestAnswer& answer) {
    std::vector<std::optional<answers::Total>> result;
    for (const Quantity& answered : answer.quantities) result.push_back(total_of(answered));
    return result;
}

}  // namespace flutebook::services
