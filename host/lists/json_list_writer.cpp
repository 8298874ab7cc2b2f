// A list's answer as JSON: what a row lacks has no key.
#include <nlohmann/json.hpp>

#include "host/answers/price_rules_json.hpp"
#include "host/contract/model.hpp"
#include "host/lists/list_writer.hpp"

namespace flutebook::lists {

namespace {

using answers::amount_json;
using answers::Json;

Json warnings_json(const std::vector<base::Warning>& warnings) {
    Json list = Json::array();
    for (const base::Warning& warning : warnings) list.push_back({{"at", warning.at}, {"text", warning.text}});
    return list;
}

Json head(const plant::Plant& plant, const std::vector<base::Warning>& warnings) {
    Json tree;
    tree["plant"] = plant.name;
    tree["currency"] = plant.currency;
    tree["currency_decimals"] = plant.currency_minor_units;
    tree["warnings"] = warnings_json(warnings);
    tree["rows"] = Json::array();
    return answers::document("list", tree);
}

Json classes_json(const engine::ClassCosts& costs) {
    Json tree;
    for (std::size_t c = 0; c < costs.size(); ++c)
        tree[contract::to_text(static_cast<contract::CostClass>(c))] = amount_json(costs[c]);
    return tree;
}

void add_price(Json& tree, const ItemPrice& price) {
    tree["price_per_thousand"] = amount_json(price.price);
    tree["cost_per_thousand"] = amount_json(price.cost);
    tree["parts_per_thousand"] = classes_json(price.by_class);
    tree["parts_per_thousand"]["profit"] = amount_json(price.profit);
    tree["order_value"] = amount_json(price.order_value);
    answers::add_price_making(tree, price.making);
    tree["made_on"] = price.made_on;
    tree["roll_width_mm"] = price.roll_width;
}

void add_change(Json& tree, const PriceChange& change) {
    tree["old_price"] = amount_json(change.old);
    tree["difference"] = amount_json(change.difference);
    tree["difference_share"] = change.old == Money{} ? Json() : Json(change.share);
    if (!change.reason) return;
    tree["change"] = classes_json(change.reason->by_class);
    tree["change"]["profit"] = amount_json(change.reason->profit);
    tree["change"]["not_explained"] = amount_json(change.reason->not_explained);
}

}  // namespace

JsonListWriter::JsonListWriter(const plant::Plant& plant, const std::vector<base::Warning>& warnings)
    : stream_(head(plant, warnings)) {}

std::string JsonListWriter::add(const ListColumns& columns, const AnsweredRow& row) {
    Json tree;
    tree["at"] = base::place_text(row.row.place);
    for (const char* name : {"request", "customer", "quantity"})
        if (const std::string text = columns.text(row.row, name); !text.empty()) tree[name] = text;
    if (row.item.price) add_price(tree, *row.item.price);
    if (const auto change = change_of(row)) add_change(tree, *change);
    tree["warnings"] = warnings_json(row.item.warnings);
    tree["errors"] = row.item.errors;
    return stream_.add(tree);
}

}  // namespace flutebook::lists
