#include "host/answers/describe_json.hpp"

#include <nlohmann/json.hpp>

#include "host/answers/plugin_json.hpp"

namespace flutebook::answers {

namespace {

using Json = nlohmann::ordered_json;

Json ranged(const contract::Name& name) {
    Json made = name_json(name);
    made["low"] = name.range.low;
    made["high"] = name.range.high;
    return made;
}

}  // namespace

Json describe_json(const services::DescribedModel& described) {
    const contract::Model& model = described.model;
    Json made = model_json(model);
    made["provides"] = Json::array();
    for (const contract::Name& name : model.provides) made["provides"].push_back(ranged(name));
    made["needs"] = Json::array();
    for (std::size_t n = 0; n < model.needs.size(); ++n) {
        made["needs"].push_back(ranged(model.needs[n]));
        made["needs"].back()["from"] = described.need_is_fact[n] ? "fact" : "model";
    }
    return made;
}

}  // namespace flutebook::answers
