// The trim of a month and of the twelve months that end with it, as a part of the month's document.
#pragma once

#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "host/plant/trim_policy.hpp"

namespace flutebook::trim_answers {

struct TrimMonths {
    struct Board {
        std::string board;  // its code
        plant::TrimRecord month, year;
    };
    ledger::Month first{}, last{};  // of the twelve
    plant::TrimRecord month, year;  // of all boards
    std::vector<Board> boards;      // those with runs enough in the twelve months, by code
};

/// {"from","to" (of the twelve months),"month": R,"twelve_months": R,"boards":[{"board","month": R,
/// "twelve_months": R}...]}, the boards with runs enough; R = {"runs","orders","order_changes","side_trim_kg",
/// "board_kg","share","changes"}: share is side trim / board, changes is order changes / orders, null where nothing
/// ran.
[[nodiscard]] nlohmann::ordered_json trim_months_json(const TrimMonths& trim);

}  // namespace flutebook::trim_answers
