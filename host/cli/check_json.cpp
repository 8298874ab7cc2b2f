#include "host/cli/check_json.hpp"

#include <nlohmann/json.hpp>

#include "host/cli/check_text.hpp"

namespace flutebook::cli {

namespace {

using Json = nlohmann::ordered_json;

Json text_or_null(const std::string& text) {
    return text.empty() ? Json() : Json(text);
}

}  // namespace

Json check_json(const desk::Checked& checked) {
    using State = desk::Checked::State;
    Json made = {{"file", checked.asked.file},
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
    for (const desk::Checked::Rule& rule : checked.rules)
        made["rules"].push_back({{"rule", rule.id},
                                 {"group", rule.group},
                                 {"sentence", rule.sentence},
                                 {"state", state_words(rule.state)},
                                 {"said", text_or_null(rule.said)},
                                 {"again", text_or_null(rule.again)}});
    for (const desk::Checked::Figure& figure : checked.figures) made["figures"][figure.name] = figure.value;
    return made;
}

}  // namespace flutebook::cli
