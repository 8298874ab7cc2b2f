#include "host/answers/describe_json.hpp"

#include <nlohmann/json.hpp>

#include "host/answers/json_text.hpp"
#include "host/answers/plugin_json.hpp"

namespace flutebook::answers {

namespace {

Json ranged(const contract::Name& name) {
    Json result = name_json(name);
    result["low"] = name.range.low;
    result["high"] = name.range.high;
    return result;
}

}  // namespace

Json describe_json(const DescribedModel& described) {
    const contract::Model& model = described.model;
    Json result = model_json(model);
    result["provides"] = Json::array();
    for (const contract::Name& name : model.provides) result["provides"].push_back(ranged(name));
    result["needs"] = Json::array();
    for (std::size_t n = 0; n < model.needs.size(); ++n) {
        result["needs"].push_back(ranged(model.needs[n]));
        result["needs"].back()["from"] = described.need_is_fact[n] ? "fact" : "model";
    }
    return result;
}

}  // namespace flutebook::answers
