#include "host/services/plugins/check_plugin.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>

#include "host/plugin_check/trial.hpp"
#include "host/sandbox/child.hpp"

namespace flutebook::services {
namespace {

answers::Checked::State state_of(const plugin_check::RuleFinding& finding) {
    switch (finding.state) {
        case plugin_check::RuleFinding::State::holds:
            return answers::Checked::State::holds;
        case plugin_check::RuleFinding::State::broken:
            return answers::Checked::State::broken;
        case plugin_check::RuleFinding::State::not_tried:
            break;
    }
    return answers::Checked::State::not_tried;
}

// As a shell takes it for one word.
std::string one_word(const std::string& text) {
    const auto is_plain = [](unsigned char c) {
        return std::isalnum(c) != 0 || std::string("/._-+,:@%").find(static_cast<char>(c)) != std::string::npos;
    };
    if (!text.empty() && std::all_of(text.begin(), text.end(), is_plain)) return text;
    std::string result = "'";
    for (const char c : text) result += c == '\'' ? std::string("'\\''") : std::string(1, c);
    return result + "'";
}

answers::Checked::CheckedRule told(const plugin_check::RuleFinding& finding, const answers::CheckOptions& asked) {
    answers::Checked::CheckedRule result{finding.rule->group(), finding.rule->id, finding.rule->sentence,
                                         state_of(finding),     finding.text,     ""};
    if (result.state != answers::Checked::State::broken) return result;
    if (finding.rule->is_in_hosts_words()) result.said = "is refused by the host: " + result.said;
    result.again = fmt::format("flutebook plugin check {} --seed {} --orders {}", one_word(asked.file), asked.seed,
                               finding.orders > 0 ? finding.orders : asked.orders);
    return result;
}

}  // namespace

answers::Checked check_plugin(const answers::CheckOptions& asked,
                              const std::function<void(const std::string&)>& begun) {
    const contract::PluginFile file = contract::PluginFile::read(asked.file);
    const plugin_check::CheckFindings findings =
        plugin_check::try_plugin(file, plugin_check::asked_for_check(sandbox::own_program(), asked.seed, asked.orders),
                                 [&](const plugin_check::Rule& rule) { begun(rule.id); });
    answers::Checked result{asked, file.id(), file.sha256(), {}, {}};
    for (const plugin_check::RuleFinding& finding : findings.rules) result.rules.push_back(told(finding, asked));
    for (const plugin_check::PluginMeasure& figure : findings.figures)
        result.figures.push_back({figure.name, figure.value});
    return result;
}

}  // namespace flutebook::services
