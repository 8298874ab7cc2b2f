#include "host/services/plugins/inspect_plugin.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>

#include "host/contract/description.hpp"
#include "host/contract/library.hpp"
#include "host/installed_set/installed_set.hpp"
#include "host/plugin_check/trial.hpp"
#include "host/plugin_check/tried_trust.hpp"
#include "host/plugin_worker/isolation.hpp"
#include "host/sandbox/child.hpp"

namespace flutebook::services {
namespace {

plant_answers::Checked::State state_of(const plugin_check::RuleFinding& finding) {
    switch (finding.state) {
        case plugin_check::RuleFinding::State::holds:
            return plant_answers::Checked::State::holds;
        case plugin_check::RuleFinding::State::broken:
            return plant_answers::Checked::State::broken;
        case plugin_check::RuleFinding::State::not_tried:
            break;
    }
    return plant_answers::Checked::State::not_tried;
}

// The text as one word of a shell command.
std::string one_word(const std::string& text) {
    const auto is_plain = [](unsigned char c) {
        return std::isalnum(c) != 0 || std::string("/._-+,:@%").find(static_cast<char>(c)) != std::string::npos;
    };
    if (!text.empty() && std::all_of(text.begin(), text.end(), is_plain)) return text;
    std::string result = "'";
    for (const char c : text) result += c == '\'' ? std::string("'\\''") : std::string(1, c);
    return result + "'";
}

plant_answers::Checked::CheckedRule checked_rule(const plugin_check::RuleFinding& finding,
                                                 const plant_answers::CheckOptions& options) {
    plant_answers::Checked::CheckedRule result{finding.rule->group(), finding.rule->id, finding.rule->sentence,
                                               state_of(finding),     finding.text,     ""};
    if (result.state != plant_answers::Checked::State::broken) return result;
    if (finding.rule->is_in_hosts_words()) result.said = "is refused by the host: " + result.said;
    result.again = fmt::format("flutebook plugin check {} --seed {} --orders {}", one_word(options.file), options.seed,
                               finding.orders > 0 ? finding.orders : options.orders);
    return result;
}

}  // namespace

plant_answers::Checked check_plugin(const plant_answers::CheckOptions& options,
                                    const std::function<void(const std::string&)>& begun) {
    const contract::PluginFile file = contract::PluginFile::read(options.file);
    const plugin_check::CheckFindings findings = plugin_check::try_plugin(
        file, plugin_check::asked_for_check(sandbox::own_program(), options.seed, options.orders),
        [&](const plugin_check::Rule& rule) { begun(rule.id); });
    plant_answers::Checked result{options, file.id(), file.sha256(), {}, {}};
    for (const plugin_check::RuleFinding& finding : findings.rules)
        result.rules.push_back(checked_rule(finding, options));
    for (const plugin_check::PluginMeasure& figure : findings.figures)
        result.figures.push_back({figure.name, figure.value});
    return result;
}

plant_answers::DescribedModel describe(const std::string& file) {
    const contract::PluginFile read = contract::PluginFile::read(file);
    plugin_check::TriedTrust trust(sandbox::own_program(), plugin_check::Records(plugin_check::records_folder()),
                                   installed_set::installed_models());
    // Describing runs none of a model's code, but loading runs what was linked into the file.
    trust.check(read);
    plant_answers::DescribedModel result{trust.is_installed(read)
                                             ? contract::describe(contract::load_plugin(read), read.name(), read.id())
                                             : plugin_worker::ProcessLoader(sandbox::own_program()).describe(read),
                                         {}};
    for (const contract::Name& need : result.model.needs) result.need_is_fact.push_back(result.replaces_fact(need));
    return result;
}

}  // namespace flutebook::services
