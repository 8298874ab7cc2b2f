#include "host/trim_answers/shared_trim.hpp"

#include <array>
#include <cmath>

#include "host/plant/trim_record.hpp"

namespace flutebook::trim_answers {

namespace {

using Json = nlohmann::ordered_json;
using plant::TrimOrigin;
using plant::TrimPolicy;
using plant::TrimRecord;

constexpr std::array<const char*, 3> origins = {"board", "plant", "first-days"};

Json origin_json(const TrimOrigin& origin) {
    Json result = {{"of", origins.at(static_cast<std::size_t>(origin.of))},
                   {"board", origin.board},
                   {"from", plant::month_text(origin.first)},
                   {"to", plant::month_text(origin.last)},
                   {"board_runs", origin.board_runs},
                   {"plant_runs", origin.plant_runs}};
    if (origin.record) result.update(trim_record_json(*origin.record));
    return result;
}

ledger::Month month_in(const Json& tree) {
    const std::string text = tree.get<std::string>() + "-01";
    const auto day = base::parse_date(text).value_or(base::Date());
    return {day.year(), day.month()};
}

Grams grams_in(const Json& kg) {
    return Grams::of(std::llround(kg.get<double>() * 1000));
}

TrimOrigin origin_in(const Json& tree) {
    TrimOrigin result;
    for (std::size_t i = 0; i < origins.size(); ++i)
        if (tree.at("of") == origins[i]) result.of = static_cast<TrimOrigin::Of>(i);
    result.board = tree.at("board");
    result.first = month_in(tree.at("from"));
    result.last = month_in(tree.at("to"));
    result.board_runs = tree.at("board_runs");
    result.plant_runs = tree.at("plant_runs");
    if (!tree.contains("runs")) return result;
    TrimRecord record;
    record.runs = tree.at("runs");
    record.orders = tree.at("orders");
    record.changes = tree.at("order_changes");
    record.side_trim = grams_in(tree.at("side_trim_kg"));
    record.board = grams_in(tree.at("board_kg"));
    result.record = record;
    return result;
}

}  // namespace

Json trim_record_json(const TrimRecord& record) {
    return {{"runs", record.runs},
            {"orders", record.orders},
            {"order_changes", record.changes},
            {"side_trim_kg", record.side_trim.to_kg()},
            {"board_kg", record.board.to_kg()}};
}

Json trim_policy_json(const TrimPolicy& policy) {
    Json result = {{"share", policy.share.value_or(0)}, {"changes", policy.changes}};
    if (policy.origin) result["origin"] = origin_json(*policy.origin);
    return result;
}

Json shared_trim_json(const SharedTrim& trim) {
    Json alone = Json::array();
    for (const SharedTrim::Alone& item : trim.alone)
        alone.push_back({{"quantity", item.quantity},
                         {"price_per_thousand",
                          item.price_per_thousand ? Json(item.price_per_thousand->to_double()) : Json(nullptr)},
                         {"own_share", item.own_share}});
    Json result = trim_policy_json(trim.policy);
    result["alone"] = std::move(alone);
    return result;
}

SharedTrim shared_trim_in(const Json& tree) {
    SharedTrim result;
    result.policy.share = tree.at("share").get<double>();
    result.policy.changes = tree.at("changes");
    if (tree.contains("origin")) result.policy.origin = origin_in(tree.at("origin"));
    for (const Json& item : tree.at("alone")) {
        SharedTrim::Alone& alone = result.alone.emplace_back();
        alone.quantity = item.at("quantity");
        alone.own_share = item.at("own_share");
        // Written with four places at most, so the nearest ten-thousandth is the same amount again.
        if (const Json& price = item.at("price_per_thousand"); !price.is_null())
            alone.price_per_thousand = Money::rounded(price.get<double>(), 4);
    }
    return result;
}

}  // namespace flutebook::trim_answers
