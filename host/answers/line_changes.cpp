#include "host/answers/line_changes.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <utility>

namespace flutebook::answers {

namespace {

constexpr const char* dispatch = "dispatch";

std::string machine_of(const Quote& quote, std::size_t step) {
    if (step == 0) return quote.corrugator;
    return step <= quote.route.size() ? quote.route[step - 1] : dispatch;
}

struct CostKey {
    std::string key;   // the same before and after, however many machines stand before dispatch
    ChangedLine line;  // its figures as `now`
};

std::vector<CostKey> lines_of(const Quote& quote) {
    std::vector<CostKey> result;
    for (const CostLine& cost : quote.lines) {
        ChangedLine line{cost.plugin, cost.line, cost.step, cost.ply, std::nullopt, std::nullopt, cost.title};
        const std::string machine = machine_of(quote, cost.step);
        const std::string place = machine == dispatch ? machine : std::to_string(cost.step);
        const std::string ply = cost.ply ? std::to_string(*cost.ply) : "";
        line.now = {machine, cost.quantity, cost.rate, cost.unit, cost.amount};
        result.push_back({fmt::format("{} {} {} {}", cost.plugin, cost.line, place, ply), std::move(line)});
    }
    return result;
}

}  // namespace

std::optional<Total> total_of(const RequestAnswer::Quantity& quantity) {
    if (quantity.set)
        return Total{quantity.set->cost, quantity.set->cost_per_thousand, quantity.set->price_per_thousand};
    if (!quantity.quote) return std::nullopt;
    return Total{quantity.quote->cost, quantity.quote->cost_per_thousand, quantity.quote->price_per_thousand};
}

std::vector<ChangedLine> lines_beside(const Quote& was, const Quote& now) {
    std::vector<CostKey> then = lines_of(was);
    std::vector<ChangedLine> result;
    for (CostKey& cost_key : lines_of(now)) {
        const auto before =
            std::find_if(then.begin(), then.end(), [&](const CostKey& line) { return line.key == cost_key.key; });
        if (before != then.end()) {
            cost_key.line.was = before->line.now;
            then.erase(before);
        }
        result.push_back(std::move(cost_key.line));
    }
    for (CostKey& gone : then) {
        gone.line.was = std::exchange(gone.line.now, std::nullopt);
        result.push_back(std::move(gone.line));
    }
    return result;
}

}  // namespace flutebook::answers
