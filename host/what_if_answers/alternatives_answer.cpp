#include "host/what_if_answers/alternatives_answer.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <utility>

#include "host/answers/request_json.hpp"

namespace flutebook::what_if_answers {

using answers::amount_json;
using answers::document;
using answers::Json;
using answers::QuoteOptions;
using answers::request_json;

namespace {

Json alternative_json(const plant::Plant& plant, const Alternative& item, const QuoteOptions& asked) {
    Json result = {{"board", item.board ? Json(*item.board) : Json(nullptr)},
                   {"margin", item.margin ? Json(*item.margin) : Json(nullptr)},
                   {"price_per_thousand", item.price ? amount_json(*item.price) : Json(nullptr)},
                   {"margins", item.margins},
                   {"complaints", item.complaints}};
    if (!item.answer) {
        result["quotes"] = nullptr;
        return result;
    }
    const Json answer = request_json(plant, *item.answer, asked);
    for (const auto& [key, value] : answer.items())
        if (key != "request") result[key] = value;
    return result;
}

}  // namespace

bool Alternatives::are_complete() const {
    return std::all_of(items.begin(), items.end(),
                       [](const Alternative& item) { return item.answer && item.answer->is_complete(); });
}

AlternativesStream::AlternativesStream(const plant::Plant& plant, QuoteOptions asked)
    : plant_(plant),
      asked_(std::move(asked)),
      list_(document("quote-alternatives",
                     {{"plant", plant.name}, {"currency", plant.currency}, {"requests", Json::array()}})) {}

std::string AlternativesStream::add(const Alternatives& answer) {
    Json items = Json::array();
    for (const Alternative& item : answer.items) items.push_back(alternative_json(plant_, item, asked_));
    Json result = {{"request", answer.request.number}};
    if (!answer.changed.empty()) result["changed"] = changed_json(answer.changed);
    result["alternatives"] = std::move(items);
    return list_.add(std::move(result));
}

}  // namespace flutebook::what_if_answers
