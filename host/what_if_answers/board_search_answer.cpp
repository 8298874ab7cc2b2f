#include "host/what_if_answers/board_search_answer.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>

namespace flutebook::what_if_answers {

using answers::amount_json;
using answers::document;
using answers::Json;

namespace {

template <typename Value>
Json or_null(const std::optional<Value>& value) {
    return value ? Json(*value) : Json(nullptr);
}

Json amount_or_null(const std::optional<Money>& amount) {
    return amount ? amount_json(*amount) : Json(nullptr);
}

Json trial_json(const BoardOnTrial& board) {
    Json quotes = Json::array();
    for (const BoardOnTrial::Priced& item : board.quantities)
        quotes.push_back({{"quantity", item.quantity},
                          {"cost", amount_or_null(item.cost)},
                          {"price_per_thousand", amount_or_null(item.price_per_thousand)}});
    return {{"board", board.board},
            {"ect_kn_m", or_null(board.ect_kn_m)},
            {"compression_n", or_null(board.compression_n)},
            {"why_not", board.why_not.empty() ? Json(nullptr) : Json(board.why_not)},
            {"quotes", std::move(quotes)}};
}

}  // namespace

bool BoardSearch::is_complete() const {
    return std::all_of(cheapest.begin(), cheapest.end(), [](const auto& board) { return board.has_value(); });
}

BoardSearchStream::BoardSearchStream(const plant::Plant& plant)
    : list_(document("board-search",
                     {{"plant", plant.name}, {"currency", plant.currency}, {"requests", Json::array()}})) {}

std::string BoardSearchStream::add(const BoardSearch& search) {
    Json result = {{"request", search.request.number},
                   {"asked", {{"ect_kn_m", or_null(search.asked.ect_kn_m)}, {"bct_kn", or_null(search.asked.bct_kn)}}},
                   {"boards", Json::array()},
                   {"cheapest", Json::array()}};
    for (const BoardOnTrial& board : search.boards) result["boards"].push_back(trial_json(board));
    for (std::size_t i = 0; i < search.cheapest.size(); ++i)
        result["cheapest"].push_back(
            {{"quantity", search.request.quantities[i]},
             {"board", search.cheapest[i] ? Json(search.boards[*search.cheapest[i]].board) : Json(nullptr)}});
    return list_.add(result);
}

}  // namespace flutebook::what_if_answers
