#include "host/answers/check_json.hpp"

#include <nlohmann/json.hpp>

#include "host/answers/json_text.hpp"

namespace flutebook::answers {

namespace {

Json text_or_null(const std::string& text) {
    return text.empty() ? Json() : Json(text);
}

}  // namespace

Json check_json(const Checked& checked) {
    using State = Checked::State;
    Json result = {{"file", checked.asked.file},
                   {"model", checked.model},
                   {"sha256", checked.sha256},
                   {"seed", checked.asked.seed},
                   {"orders", checked.asked.orders},
                   {"passed", checked.has_passed()},
                   {"holds", checked.count(State::holds)},
                   {"broken", checked.count(State::broken)},
                   {"not_tried", checked.count(State::not_tried)},
                   {"rules", Json::array()},
                   {"figures", Json::object()}};
    for (const Checked::CheckedRule& rule : checked.rules)
        result["rules"].push_back({{"rule", rule.id},
                                   {"group", rule.group},
                                   {"sentence", rule.sentence},
                                   {"state", state_words(rule.state)},
                                   {"said", text_or_null(rule.said)},
                                   {"again", text_or_null(rule.again)}});
    for (const Checked::PluginMeasure& figure : checked.figures) result["figures"][figure.name] = figure.value;
    return result;
}

std::string state_words(Checked::State state) {
    switch (state) {
        case Checked::State::holds:
            return "holds";
        case Checked::State::broken:
            return "broken";
        case Checked::State::not_tried:
            break;
    }
    return "not tried";
}

}  // namespace flutebook::answers
