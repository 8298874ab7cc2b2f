// A value that a row lacks has no key.
#include "host/answers/list_json.hpp"

#include <nlohmann/json.hpp>

#include "host/answers/json_parts.hpp"
#include "host/answers/price_rules_json.hpp"
#include "host/contract/model.hpp"

namespace flutebook::answers {

namespace {

Json list_document(const plant::Plant& plant, const std::vector<base::Warning>& warnings) {
    return document("list", {{"plant", plant.name},
                             {"currency", plant.currency},
                             {"currency_decimals", plant.currency_minor_units},
                             {"warnings", warnings_json(warnings)},
                             {"rows", Json::array()}});
}

Json classes_json(const engine::ClassCosts& costs) {
    Json tree;
    for (std::size_t c = 0; c < costs.size(); ++c)
        tree[contract::to_text(static_cast<contract::CostClass>(c))] = amount_json(costs[c]);
    return tree;
}

void add_item_price(Json& tree, const ItemPrice& price) {
    tree["price_per_thousand"] = amount_json(price.price);
    tree["cost_per_thousand"] = amount_json(price.cost);
    tree["parts_per_thousand"] = classes_json(price.by_class);
    tree["parts_per_thousand"]["profit"] = amount_json(price.profit);
    tree["order_value"] = amount_json(price.order_value);
    add_price_making(tree, price.making);
    tree["made_on"] = price.made_on;
    tree["roll_width_mm"] = price.roll_width;
    tree["not_in_price"] = not_in_price_json(price.not_in_price);
}

void add_price_change(Json& tree, const PriceChange& change) {
    tree["old_price"] = amount_json(change.old);
    tree["difference"] = amount_json(change.difference);
    tree["difference_share"] = change.old == Money{} ? Json() : Json(change.share);
    if (!change.reason) return;
    tree["change"] = classes_json(change.reason->by_class);
    tree["change"]["profit"] = amount_json(change.reason->profit);
    tree["change"]["not_explained"] = amount_json(change.reason->not_explained);
}

}  // namespace

ListStream::ListStream(const plant::Plant& plant, const std::vector<base::Warning>& warnings)
    : rows_(list_document(plant, warnings)) {}

std::string ListStream::add(const ListedItem& item) {
    Json tree;
    tree["at"] = item.at;
    const auto add_text = [&](const char* key, const std::string& text) {
        if (!text.empty()) tree[key] = text;
    };
    add_text("request", item.request);
    add_text("customer", item.customer);
    add_text("quantity", item.quantity);
    if (item.price) add_item_price(tree, *item.price);
    if (item.change) add_price_change(tree, *item.change);
    tree["warnings"] = warnings_json(item.warnings);
    tree["errors"] = item.errors;
    return rows_.add(tree);
}

}  // namespace flutebook::answers
