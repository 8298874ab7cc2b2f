#include "host/month_answers/order_answer.hpp"

#include <nlohmann/json.hpp>

#include "host/answers/json_text.hpp"
#include "host/base/date.hpp"

namespace flutebook::answers {

namespace {

Json stages_json(const Stages& cost) {
    return {{"quoted", amount_json(cost.quoted)},
            {"standard", amount_json(cost.standard)},
            {"converted", amount_json(cost.converted)},
            {"used", amount_json(cost.used)},
            {"actual", amount_json(cost.paid)}};
}

Json variances_json(const Stages& cost) {
    const auto variances = variances_of(cost);
    return {{"volume", amount_json(variances.volume)},
            {"yield", amount_json(variances.yield)},
            {"usage", amount_json(variances.usage)},
            {"price", amount_json(variances.price)},
            {"total", amount_json(variances.total())}};
}

Json pieces_json(const OrderStep::StepPieces& pieces) {
    return {{"fed", pieces.fed}, {"setup", pieces.setup}, {"good", pieces.good}};
}

Json steps_json(const std::vector<OrderStep>& steps) {
    Json result = Json::array();
    for (const auto& step : steps) {
        Json ran = Json::object();
        for (const auto& machine : step.ran.machines) ran[machine.code] = machine.amount;
        result.push_back({{"step", result.size()},
                          {"quoted", step.ran.quoted},
                          {"ran", std::move(ran)},
                          {"costed_as", step.ran.costed},
                          {"setups", step.ran.setups},
                          {"allowed", pieces_json(step.allowed)},
                          {"actual", pieces_json(step.actual)}});
    }
    return result;
}

Json lines_json(const std::vector<LineVariance>& lines) {
    Json result = Json::array();
    for (const auto& item : lines)
        result.push_back({{"plugin", item.plugin},
                          {"line", item.line},
                          {"class", contract::to_text(item.cost_class)},
                          {"cost", stages_json(item.cost)},
                          {"variance", variances_json(item.cost)}});
    return result;
}

Json inputs_json(const std::vector<InputVariance>& inputs) {
    Json result = Json::array();
    for (const auto& item : inputs) {
        const auto& input = item.input;
        result.push_back({{"material", item.material},
                          {"ply", item.ply ? Json(*item.ply) : Json(nullptr)},
                          {"kg",
                           {{"quoted", input.quoted},
                            {"standard", input.standard},
                            {"allowed", input.allowed},
                            {"used", input.used}}},
                          {"price", {{"standard", input.standard_price}, {"actual", input.actual_price}}},
                          {"cost", stages_json(item.cost)},
                          {"variance", variances_json(item.cost)}});
    }
    return result;
}

Json mass_json(const OrderMass& mass, const OrderMass::Masses& masses) {
    Json loss = Json::object();
    for (std::size_t c = 0; c < mass.causes.size(); ++c) loss[mass.causes[c].cause] = masses.losses[c];
    return {{"issued", masses.issued},
            {"adhesive", masses.adhesive},
            {"product", masses.product},
            {"loss", std::move(loss)},
            {"floor", masses.floor}};
}

// What an order and a set have alike.
template <typename OrderOrSet>
void add_totals(Json& result, const OrderOrSet& answer) {
    result["days"] = Json::array({base::to_string(answer.days.front()), base::to_string(answer.days.back())});
    result["cost"] = stages_json(answer.cost);
    result["variance"] = variances_json(answer.cost);
    result["cost_per_thousand"] = {{"quoted", amount_json(answer.quoted_per_thousand)},
                                   {"actual", amount_json(answer.paid_per_thousand)}};
    result["as_quoted"] = answer.is_as_quoted();
    result["saved_cost"] = amount_json(answer.saved_cost);
}

Json changed_plugins_json(const std::vector<ChangedPlugin>& plugins) {
    Json result = Json::array();
    for (const auto& plugin : plugins) result.push_back(changed_plugin_json(plugin));
    return result;
}

Json order_cost_json(const OrderCost& answer) {
    Json result;
    result["order"] = answer.order.number;
    if (!answer.order.piece.empty()) result["piece"] = answer.order.piece;
    result["quote"] = answer.order.quote;
    result["request"] = answer.request;
    result["customer"] = answer.order.customer;
    result["currency"] = answer.currency;
    result["quantity"] = {{"quoted", answer.order.quantity}, {"made", answer.boxes_made}};
    add_totals(result, answer);
    const std::string& model = answer.order.lost_otherwise_by;
    result["losses_quoted_by"] = model.empty() ? Json(nullptr) : Json(model);
    result["plugins"] = changed_plugins_json(answer.plugins);
    result["steps"] = steps_json(answer.steps);
    result["lines"] = lines_json(answer.lines);
    result["inputs"] = inputs_json(answer.inputs);
    result["other_variance"] = variances_json(answer.other_cost());
    result["mass_kg"] = {{"allowed", mass_json(answer.mass, answer.mass.allowed)},
                         {"actual", mass_json(answer.mass, answer.mass.actual)}};
    return result;
}

}  // namespace

Stages& Stages::operator+=(const Stages& other) {
    quoted += other.quoted;
    standard += other.standard;
    converted += other.converted;
    used += other.used;
    paid += other.paid;
    return *this;
}

Stages operator-(const Stages& left, const Stages& right) {
    return {left.quoted - right.quoted, left.standard - right.standard, left.converted - right.converted,
            left.used - right.used, left.paid - right.paid};
}

Variances variances_of(const Stages& stages) {
    return {stages.standard - stages.quoted, stages.converted - stages.standard, stages.used - stages.converted,
            stages.paid - stages.used};
}

std::optional<Stages> stages_of(const MaterialInput& input) {
    const auto quoted = Money::of(input.quoted, input.standard_price);
    const auto standard = Money::of(input.standard, input.standard_price);
    const auto converted = Money::of(input.allowed, input.standard_price);
    const auto used = Money::of(input.used, input.standard_price);
    const auto paid = Money::of(input.used, input.actual_price);
    if (!quoted || !standard || !converted || !used || !paid) return std::nullopt;
    return Stages{*quoted, *standard, *converted, *used, *paid};
}

Stages OrderCost::other_cost() const {
    Stages of_inputs;
    for (const auto& input : inputs) of_inputs += input.cost;
    return cost - of_inputs;
}

std::string order_document(const std::vector<orders::OrderRecord>& order) {
    const orders::OrderRecord& first = order.front();
    const bool is_set = !first.piece.empty();
    Json result = {{"order", is_set ? first.set_number() : first.number},
                   {"quote", first.quote},
                   {"quantity", is_set ? first.sets : first.quantity},
                   {"customer", first.customer},
                   {"board", first.board}};
    if (!is_set) {
        result["corrugator"] = first.corrugator;
        if (!first.bought_from.empty()) result["bought_from"] = first.bought_from;
        result["route"] = first.route;
        return document_text("order", result);
    }
    result["pieces"] = Json::array();
    for (const orders::OrderRecord& piece : order)
        result["pieces"].push_back({{"order", piece.number},
                                    {"piece", piece.piece},
                                    {"quantity", piece.quantity},
                                    {"corrugator", piece.corrugator},
                                    {"route", piece.route}});
    return document_text("order", result);
}

std::string order_cost_document(const OrderCost& answer) {
    return document_text("order-cost", order_cost_json(answer));
}

std::string set_cost_document(const SetCost& answer) {
    Json result;
    result["order"] = answer.number;
    result["quote"] = answer.quote;
    result["request"] = answer.request;
    result["customer"] = answer.customer;
    result["currency"] = answer.currency;
    result["quantity"] = {{"quoted", answer.sets}, {"made", answer.sets_made}};
    add_totals(result, answer);
    result["plugins"] = changed_plugins_json(answer.plugins);
    result["pieces"] = Json::array();
    for (const OrderCost& piece : answer.pieces) result["pieces"].push_back(order_cost_json(piece));
    return document_text("order-cost", result);
}

}  // namespace flutebook::answers
