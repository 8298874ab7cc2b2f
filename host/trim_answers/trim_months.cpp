#include "host/trim_answers/trim_months.hpp"

#include "host/plant/trim_record.hpp"
#include "host/trim_answers/shared_trim.hpp"

namespace flutebook::trim_answers {

namespace {

nlohmann::ordered_json shares_json(const plant::TrimRecord& record) {
    nlohmann::ordered_json result = trim_record_json(record);
    result["share"] = nullptr;
    result["changes"] = nullptr;
    if (record.runs == 0) return result;
    result["share"] = record.share();
    result["changes"] = record.changes_per_order();
    return result;
}

}  // namespace

nlohmann::ordered_json trim_months_json(const TrimMonths& trim) {
    nlohmann::ordered_json result = {{"from", plant::month_text(trim.first)},
                                     {"to", plant::month_text(trim.last)},
                                     {"month", shares_json(trim.month)},
                                     {"twelve_months", shares_json(trim.year)}};
    result["boards"] = nlohmann::ordered_json::array();
    for (const TrimMonths::Board& board : trim.boards)
        result["boards"].push_back(
            {{"board", board.board}, {"month", shares_json(board.month)}, {"twelve_months", shares_json(board.year)}});
    return result;
}

}  // namespace flutebook::trim_answers
