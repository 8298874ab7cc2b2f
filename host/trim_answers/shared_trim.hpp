// How an order pays for a share of its web, as a part of a quote's document, written and read.
#pragma once

#include <nlohmann/json.hpp>
#include <optional>
#include <vector>

#include "host/plant/trim_policy.hpp"
#include "ledger/values/money.hpp"

namespace flutebook::trim_answers {

/// How a request that pays a share of its web pays for trim, beside what it would cost if it ran alone.
struct SharedTrim {
    struct Alone {
        double quantity;
        std::optional<Money> price_per_thousand;  // nothing where it cannot be made
        double own_share;                         // trim / roll width of the layout that was chosen with the share
    };
    plant::TrimPolicy policy = {};
    std::vector<Alone> alone = {};  // by quantity of the request, those that can be made

    [[nodiscard]] double share() const { return policy.share.value_or(0); }
};

/// {"share","changes","origin":O,"alone":[{"quantity","price_per_thousand","own_share"}]}, the price null where none
/// can be made; without "origin" where the request gave the numbers.
[[nodiscard]] nlohmann::ordered_json shared_trim_json(const SharedTrim& trim);

/// {"share","changes","origin":O}, without "origin" where the request gave the numbers. O = {"of" (board: the runs of
/// the order's board; plant: those of all boards; first-days: the plant's own numbers, for want of runs), "board" (its
/// code), "from","to" (months, both counted), "board_runs","plant_runs" (found there)} and, where they were counted,
/// {"runs","orders","order_changes","side_trim_kg","board_kg"}: share is side trim / board, changes is order changes /
/// orders.
[[nodiscard]] nlohmann::ordered_json trim_policy_json(const plant::TrimPolicy& policy);

/// {"runs","orders","order_changes","side_trim_kg","board_kg"}
[[nodiscard]] nlohmann::ordered_json trim_record_json(const plant::TrimRecord& record);

/// Throws nlohmann::json::exception where it is none.
[[nodiscard]] SharedTrim shared_trim_in(const nlohmann::ordered_json& tree);

}  // namespace flutebook::trim_answers
