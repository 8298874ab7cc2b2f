#include "host/what_if_answers/changed_number.hpp"

#include <nlohmann/json.hpp>

namespace flutebook::what_if_answers {

answers::Json changed_json(const std::vector<ChangedNumber>& changed) {
    answers::Json result = answers::Json::array();
    for (const ChangedNumber& number : changed)
        result.push_back({{"path", number.path}, {"was", number.was}, {"now", number.now}});
    return result;
}

}  // namespace flutebook::what_if_answers
