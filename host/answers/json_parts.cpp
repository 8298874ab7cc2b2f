#include "host/answers/json_parts.hpp"

#include <nlohmann/json.hpp>

namespace flutebook::answers {

Json warnings_json(const std::vector<base::Warning>& warnings) {
    Json result = Json::array();
    for (const base::Warning& warning : warnings) result.push_back({{"at", warning.at}, {"text", warning.text}});
    return result;
}

Json not_in_price_json(const std::vector<NotInPrice>& items) {
    Json result = Json::array();
    for (const NotInPrice& item : items)
        result.push_back({{"plugin", item.plugin},
                          {"line", item.line},
                          {"setting", item.setting ? Json(*item.setting) : Json(nullptr)},
                          {"amount", item.amount ? amount_json(*item.amount) : Json(nullptr)},
                          {"title", item.title},
                          {"meaning", item.meaning},
                          {"colours", item.colours}});
    return result;
}

}  // namespace flutebook::answers
