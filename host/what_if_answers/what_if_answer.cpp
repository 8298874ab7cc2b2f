#include "host/what_if_answers/what_if_answer.hpp"

#include <nlohmann/json.hpp>
#include <utility>

namespace flutebook::what_if_answers {

using answers::amount_json;
using answers::ChangedLine;
using answers::document;
using answers::Json;
using answers::Total;

namespace {

Json total_json_of(Money cost, Money cost_per_thousand, Money price_per_thousand) {
    return {{"cost", amount_json(cost)},
            {"cost_per_thousand", amount_json(cost_per_thousand)},
            {"price_per_thousand", amount_json(price_per_thousand)}};
}

Json side_json(const std::optional<Total>& total) {
    return total ? total_json_of(total->cost, total->cost_per_thousand, total->price_per_thousand) : Json(nullptr);
}

Json difference_of(const QuantityBeside& quantity) {
    if (!quantity.was || !quantity.now) return nullptr;
    const Total &was = *quantity.was, &now = *quantity.now;
    return total_json_of(now.cost - was.cost, now.cost_per_thousand - was.cost_per_thousand,
                         now.price_per_thousand - was.price_per_thousand);
}

Json line_beside_json(const ChangedLine& line) {
    const auto amount = [](const std::optional<ChangedLine::Figures>& side) {
        return amount_json(side ? side->amount : Money());
    };
    return {{"plugin", line.plugin},
            {"line", line.line},
            {"title", line.title},
            {"step", line.step},
            {"ply", line.ply ? Json(*line.ply) : Json(nullptr)},
            {"before", amount(line.was)},
            {"after", amount(line.now)},
            {"difference", amount_json(line.by())}};
}

Json quantity_beside_json(const QuantityBeside& quantity) {
    Json result = {{"quantity", quantity.quantity}};
    if (!quantity.piece.empty()) result["piece"] = quantity.piece;
    result["before"] = side_json(quantity.was);
    result["after"] = side_json(quantity.now);
    result["difference"] = difference_of(quantity);
    result["made_on"] = quantity.made_on;
    result["now_made_on"] = quantity.now_made_on;
    result["lines"] = Json::array();
    for (const ChangedLine& line : quantity.lines) result["lines"].push_back(line_beside_json(line));
    result["limits"] = quantity.limits;
    return result;
}

}  // namespace

WhatIfStream::WhatIfStream(const plant::Plant& plant, const std::vector<std::string>& asked)
    : list_(document(
          "quote-with",
          {{"plant", plant.name}, {"currency", plant.currency}, {"with", asked}, {"requests", Json::array()}})) {}

std::string WhatIfStream::add(const WhatIf& answer) {
    Json result = {
        {"request", answer.request.number}, {"changed", changed_json(answer.changed)}, {"quantities", Json::array()}};
    for (const QuantityBeside& quantity : answer.quantities)
        result["quantities"].push_back(quantity_beside_json(quantity));
    result["warnings"] = Json::array();
    for (const base::Warning& warning : answer.warnings)
        result["warnings"].push_back({{"at", warning.at}, {"text", warning.text}});
    return list_.add(result);
}

}  // namespace flutebook::what_if_answers
