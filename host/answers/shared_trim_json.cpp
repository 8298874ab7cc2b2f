#include "host/answers/shared_trim_json.hpp"

#include <nlohmann/json.hpp>

namespace flutebook::answers {

Json shared_trim_json(const SharedTrim& trim) {
    Json alone = Json::array();
    for (const SharedTrim::Alone& item : trim.alone)
        alone.push_back({{"quantity", item.quantity},
                         {"price_per_thousand",
                          item.price_per_thousand ? Json(item.price_per_thousand->to_double()) : Json(nullptr)},
                         {"own_share", item.own_share}});
    return {{"share", trim.share}, {"changes", trim.changes}, {"alone", std::move(alone)}};
}

SharedTrim shared_trim_in(const Json& tree) {
    SharedTrim result{tree.at("share"), tree.at("changes"), {}};
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

}  // namespace flutebook::answers
