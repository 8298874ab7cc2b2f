#include "host/answers/order_cost_json.hpp"

#include <nlohmann/json.hpp>

#include "host/answers/changed_plugin.hpp"
#include "host/base/date.hpp"

namespace flutebook::answers {

namespace {

Json money(Money amount) {
    return amount.to_double();
}

Json stages_json(const services::Stages& cost) {
    return {{"quoted", money(cost.quoted)},
            {"standard", money(cost.standard)},
            {"converted", money(cost.converted)},
            {"used", money(cost.used)},
            {"actual", money(cost.paid)}};
}

Json variances_json(const services::Stages& cost) {
    const auto own = services::variances_of(cost);
    return {{"volume", money(own.volume)},
            {"yield", money(own.yield)},
            {"usage", money(own.usage)},
            {"price", money(own.price)},
            {"total", money(own.total())}};
}

Json pieces_json(const services::OrderStep::StepPieces& pieces) {
    return {{"fed", pieces.fed}, {"setup", pieces.setup}, {"good", pieces.good}};
}

Json steps_json(const std::vector<services::OrderStep>& steps) {
    Json made = Json::array();
    for (const auto& own : steps) {
        Json ran = Json::object();
        for (const auto& machine : own.ran.machines) ran[machine.code] = machine.amount;
        made.push_back({{"step", made.size()},
                        {"quoted", own.ran.quoted},
                        {"ran", std::move(ran)},
                        {"costed_as", own.ran.costed},
                        {"setups", own.ran.setups},
                        {"allowed", pieces_json(own.allowed)},
                        {"actual", pieces_json(own.actual)}});
    }
    return made;
}

Json lines_json(const std::vector<services::LineVariance>& lines) {
    Json made = Json::array();
    for (const auto& own : lines)
        made.push_back({{"plugin", own.plugin},
                        {"line", own.line},
                        {"class", contract::to_text(own.cost_class)},
                        {"cost", stages_json(own.cost)},
                        {"variance", variances_json(own.cost)}});
    return made;
}

Json inputs_json(const std::vector<services::InputVariance>& inputs) {
    Json made = Json::array();
    for (const auto& own : inputs) {
        const auto& input = own.input;
        made.push_back({{"material", own.material},
                        {"ply", own.ply ? Json(*own.ply) : Json(nullptr)},
                        {"kg",
                         {{"quoted", input.quoted},
                          {"standard", input.standard},
                          {"allowed", input.allowed},
                          {"used", input.used}}},
                        {"price", {{"standard", input.standard_price}, {"actual", input.actual_price}}},
                        {"cost", stages_json(own.cost)},
                        {"variance", variances_json(own.cost)}});
    }
    return made;
}

Json mass_json(const services::OrderMass& mass, const services::OrderMass::Masses& own) {
    Json loss = Json::object();
    for (std::size_t c = 0; c < mass.causes.size(); ++c) loss[mass.causes[c].cause] = own.losses[c];
    return {{"issued", own.issued},
            {"adhesive", own.adhesive},
            {"product", own.product},
            {"loss", std::move(loss)},
            {"floor", own.floor}};
}

}  // namespace

Json order_cost_json(const services::OrderCost& answer) {
    Json made;
    made["order"] = answer.order.number;
    made["quote"] = answer.order.quote;
    made["request"] = answer.request;
    made["customer"] = answer.order.customer;
    made["currency"] = answer.currency;
    made["quantity"] = {{"quoted", answer.order.quantity}, {"made", answer.made}};
    made["days"] = Json::array({base::to_string(answer.days.front()), base::to_string(answer.days.back())});
    made["cost"] = stages_json(answer.cost);
    made["variance"] = variances_json(answer.cost);
    made["cost_per_thousand"] = {{"quoted", money(answer.quoted_per_thousand)},
                                 {"actual", money(answer.paid_per_thousand)}};
    made["as_quoted"] = answer.is_as_quoted();
    made["saved_cost"] = money(answer.saved_cost);
    made["plugins"] = Json::array();
    for (const auto& own : answer.plugins) made["plugins"].push_back(changed_plugin_json(own));
    made["steps"] = steps_json(answer.steps);
    made["lines"] = lines_json(answer.lines);
    made["inputs"] = inputs_json(answer.inputs);
    made["other_variance"] = variances_json(answer.other_cost());
    made["mass_kg"] = {{"allowed", mass_json(answer.mass, answer.mass.allowed)},
                       {"actual", mass_json(answer.mass, answer.mass.actual)}};
    return made;
}

}  // namespace flutebook::answers
