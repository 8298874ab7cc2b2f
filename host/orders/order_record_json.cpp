#include "host/orders/order_record_json.hpp"

#include <array>
#include <nlohmann/json.hpp>

namespace flutebook::orders {

namespace {

using Json = nlohmann::ordered_json;
using Kind = plant::Converter::Kind;

constexpr std::array<const char*, 3> kinds = {"printer", "die-cutter", "folder-gluer"};

// Throws the library's own exception for a name of none.
Kind kind_of(const Json& name) {
    static const Json numbers = {{kinds[0], 0}, {kinds[1], 1}, {kinds[2], 2}};
    return static_cast<Kind>(numbers.at(name.get<std::string>()).get<int>());
}

Json machines(const OrderRecord& order) {
    Json tree;
    tree["corrugators"] = Json::array();
    for (const auto& corrugator : order.corrugators)
        tree["corrugators"].push_back({{"code", corrugator.code},
                                       {"run_waste", corrugator.run_waste},
                                       {"roll_loss", corrugator.roll_loss},
                                       {"order_change_m", corrugator.order_change_m}});
    tree["converters"] = Json::array();
    for (const auto& converter : order.converters)
        tree["converters"].push_back({{"code", converter.code},
                                      {"kind", kinds.at(static_cast<std::size_t>(converter.kind))},
                                      {"run_waste", converter.run_waste},
                                      {"setup_sheets", converter.setup_sheets}});
    return tree;
}

void read_machines(const Json& tree, OrderRecord& order) {
    for (const auto& item : tree.at("corrugators"))
        order.corrugators.push_back(
            {item.at("code"), item.at("run_waste"), item.at("roll_loss"), item.at("order_change_m")});
    for (const auto& item : tree.at("converters"))
        order.converters.push_back(
            {item.at("code"), kind_of(item.at("kind")), item.at("run_waste"), item.at("setup_sheets")});
}

OrderRecord read_record(const Json& tree) {
    OrderRecord order{};
    order.number = tree.at("number");
    order.quote = tree.at("quote");
    order.quantity = tree.at("quantity");
    order.customer = tree.at("customer");
    order.board = tree.at("board");
    order.style = tree.at("style");
    for (const auto& ply : tree.at("plies"))
        order.plies.push_back({ply.at("paper"), ply.at("grammage"), ply.at("take_up"), ply.at("adhesive")});
    order.grammage_gsm = tree.at("grammage");
    order.adhesive_gsm = tree.at("adhesive");
    order.adhesive_rate = tree.at("adhesive_rate");
    order.corrugator = tree.at("corrugator");
    order.roll_width_mm = tree.at("roll_width_mm");
    order.outs = tree.at("outs");
    order.slit_mm = tree.at("slit_mm");
    order.chop_mm = tree.at("chop_mm");
    order.sheet_area_m2 = tree.at("sheet_area_m2");
    order.ups = tree.at("ups");
    order.box_area_m2 = tree.at("box_area_m2");
    order.route = tree.at("route").get<std::vector<std::string>>();
    order.parting = tree.at("parting");
    read_machines(tree, order);
    return order;
}

}  // namespace

std::string to_json(const OrderRecord& order) {
    Json tree = {{"number", order.number},     {"quote", order.quote}, {"quantity", order.quantity},
                 {"customer", order.customer}, {"board", order.board}, {"style", order.style}};
    tree["plies"] = Json::array();
    for (const auto& ply : order.plies)
        tree["plies"].push_back({{"paper", ply.paper},
                                 {"grammage", ply.grammage_gsm},
                                 {"take_up", ply.take_up},
                                 {"adhesive", ply.adhesive_gsm}});
    tree["grammage"] = order.grammage_gsm;
    tree["adhesive"] = order.adhesive_gsm;
    tree["adhesive_rate"] = order.adhesive_rate;
    tree["corrugator"] = order.corrugator;
    tree["roll_width_mm"] = order.roll_width_mm;
    tree["outs"] = order.outs;
    tree["slit_mm"] = order.slit_mm;
    tree["chop_mm"] = order.chop_mm;
    tree["sheet_area_m2"] = order.sheet_area_m2;
    tree["ups"] = order.ups;
    tree["box_area_m2"] = order.box_area_m2;
    tree["route"] = order.route;
    tree["parting"] = order.parting;
    tree.update(machines(order));
    return tree.dump();
}

std::optional<OrderRecord> order_record_of(const std::string& json) {
    const auto tree = Json::parse(json, nullptr, false);
    if (!tree.is_object()) return std::nullopt;
    try {
        return read_record(tree);
    } catch (const Json::exception&) {
        return std::nullopt;
    }
}

}  // namespace flutebook::orders
