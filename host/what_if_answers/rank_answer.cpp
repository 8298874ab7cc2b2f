#include "host/what_if_answers/rank_answer.hpp"

#include <nlohmann/json.hpp>
#include <utility>

#include "host/answers/json_parts.hpp"

namespace flutebook::what_if_answers {

using answers::amount_json;
using answers::document;
using answers::Json;

namespace {

Json ranked_json(const RankedNumber& number) {
    return {{"path", number.path},
            {"was", number.was},
            {"now", number.now},
            {"tenth", number.tenth == RankedNumber::Tenth::more ? "more" : "less"},
            {"price_per_thousand", amount_json(number.price)},
            {"change", amount_json(number.change)}};
}

Json quantity_rank_json(const QuantityRank& quantity) {
    Json result = {{"quantity", quantity.quantity},
                   {"price_per_thousand", quantity.price ? amount_json(*quantity.price) : Json(nullptr)},
                   {"moved", Json::array()},
                   {"unmoved", quantity.unmoved},
                   {"stuck", Json::array()}};
    for (const RankedNumber& number : quantity.moved) result["moved"].push_back(ranked_json(number));
    for (const StuckNumber& number : quantity.stuck)
        result["stuck"].push_back({{"path", number.path}, {"why", number.why}});
    return result;
}

}  // namespace

RankStream::RankStream(const plant::Plant& plant)
    : list_(
          document("quote-rank", {{"plant", plant.name}, {"currency", plant.currency}, {"requests", Json::array()}})) {}

std::string RankStream::add(const Rank& answer) {
    Json quantities = Json::array();
    for (const QuantityRank& quantity : answer.quantities) quantities.push_back(quantity_rank_json(quantity));
    Json result = {{"request", answer.request.number}};
    if (!answer.changed.empty()) result["changed"] = changed_json(answer.changed);
    result["quantities"] = std::move(quantities);
    if (!answer.changed.empty()) result["warnings"] = answers::warnings_json(answer.warnings);
    return list_.add(std::move(result));
}

}  // namespace flutebook::what_if_answers
