#include "host/services/quoting/changed_quotes.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>

namespace flutebook::services {

namespace {

using Json = nlohmann::ordered_json;

constexpr int kept_decimals = 4;

// What was printed with four places at most is that many ten-thousandths again.
Money money(const Json& amount) {
    return Money::rounded(amount.get<double>(), kept_decimals).value();
}

bool is_made(const Json& quote) {
    return !quote.contains("refused");
}

std::optional<answers::Total> total_of(const Json& quote) {
    if (!is_made(quote)) return std::nullopt;
    return answers::Total{money(quote.at("cost")), money(quote.at("cost_per_thousand")),
                          money(quote.at("price_per_thousand"))};
}

// All but what is told line by line.
std::vector<answers::Leaf> figures_of(Json quote) {
    for (const char* key : {"quantity", "lines", "explain"}) quote.erase(key);
    return leaves_of(quote);
}

std::string machine_of(const Json& quote, std::size_t step) {
    if (step == 0) return quote.at("corrugator");
    const Json& route = quote.at("route");
    return step <= route.size() ? route.at(step - 1).get<std::string>() : "dispatch";
}

struct CostKey {
    std::string key;            // the same then and today, however many machines stand before dispatch
    answers::ChangedLine line;  // its figures as `now`
};

std::vector<CostKey> lines_of(const Json& quote) {
    std::vector<CostKey> result;
    for (const Json& json : quote.at("lines")) {
        answers::ChangedLine line{json.at("plugin"), json.at("line"), json.at("step"),
                                  std::nullopt,      std::nullopt,    std::nullopt};
        if (!json.at("ply").is_null()) line.ply = json.at("ply").get<std::size_t>();
        const std::string machine = machine_of(quote, line.step);
        const std::string place = machine == "dispatch" ? machine : std::to_string(line.step);
        const std::string key = fmt::format("{} {} {} {}", line.plugin, line.line, place, json.at("ply").dump());
        line.now = {machine, json.at("quantity"), json.at("rate"), json.at("unit"), money(json.at("amount"))};
        result.push_back({key, std::move(line)});
    }
    return result;
}

bool is_same(const answers::ChangedLine::Figures& was, const answers::ChangedLine::Figures& now) {
    return was.quantity == now.quantity && was.rate == now.rate && was.unit == now.unit && was.amount == now.amount;
}

std::vector<answers::ChangedLine> changed_lines(const Json& was, const Json& now) {
    std::vector<CostKey> then = lines_of(was);
    std::vector<answers::ChangedLine> result;
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

std::vector<std::string> limits_of(const Json& quote) {
    std::vector<std::string> result;
    for (const Json& json : quote.at("refused"))
        result.push_back(json.at("candidate").get<std::string>() + ": " + json.at("limit").get<std::string>());
    return result;
}

answers::ChangedQuantity changed_quantity(const Json& was, const Json& now) {
    answers::ChangedQuantity result{was.at("quantity"), total_of(was), std::nullopt, {}, {}, {}};
    if (now.is_null()) return result;
    result.now = total_of(now);
    if (is_made(was) == is_made(now)) result.figures = differences(figures_of(was), figures_of(now));
    if (is_made(was) && is_made(now)) result.lines = changed_lines(was, now);
    if (is_made(was) && !is_made(now)) result.limits = limits_of(now);
    return result;
}

}  // namespace

std::vector<answers::ChangedQuantity> changed_quantities(const Json& was, const Json& now) {
    std::vector<answers::ChangedQuantity> result;
    const Json& quotes = was.at("quotes");
    for (std::size_t i = 0; i < quotes.size(); ++i)
        result.push_back(changed_quantity(quotes[i], now.is_null() ? Json() : now.at("quotes").at(i)));
    return result;
}

std::vector<std::optional<answers::Total>> totals_of(const Json& answer) {
    std::vector<std::optional<answers::Total>> result;
    for (const Json& quote : answer.at("quotes")) result.push_back(total_of(quote));
    return result;
}

}  // namespace flutebook::services
