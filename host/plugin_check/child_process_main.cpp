#include "host/plugin_check/child_process_main.hpp"

#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <set>
#include <string_view>

#include "host/base/errors.hpp"
#include "host/fields/units.hpp"
#include "host/plugin_check/plugin_under_test.hpp"
#include "host/plugin_check/row_checks.hpp"
#include "host/sandbox/build.hpp"
#include "host/sandbox/child.hpp"
#include "host/sandbox/confine.hpp"
#include "host/sandbox/guarded.hpp"

namespace flutebook::plugin_check {
namespace {

using Clock = std::chrono::steady_clock;

constexpr const char* trial_word = "inner:trial";
constexpr const char* drawn_word = "drawn";
constexpr const char* default_word = "by-default";
constexpr int report_descriptor = 3;
constexpr int file_descriptor = 4;
enum TrialArgument : int { program, inner, file_name, seconds, seed, orders, settings, many_orders, first_rule };

constexpr std::size_t timed_calls = 41;

Group full_block(const std::vector<Group>& groups) {
    const auto largest = std::max_element(
        groups.begin(), groups.end(), [](const Group& left, const Group& right) { return left.size() < right.size(); });
    return repeated(*largest, usual_block);
}

// The median of many calls: neither the first, slow call nor an interrupted one.
double nanoseconds_a_row(const contract::Model& model, const Group& block) {
    TrialBlock trial_block(model, block.front()->shape, usual_block, GuardPages::none);
    std::vector<double> taken;
    for (std::size_t round = 0; round < timed_calls; ++round) {
        trial_block.fill(block);
        trial_block.begin_results();
        const Clock::time_point begun = Clock::now();
        model.evaluate(&trial_block.block());
        taken.push_back(std::chrono::duration<double, std::nano>(Clock::now() - begun).count());
    }
    std::nth_element(taken.begin(), taken.begin() + timed_calls / 2, taken.end());
    return taken[timed_calls / 2] / static_cast<double>(block.size());
}

void measure(PluginUnderTest& plugin) {
    plugin.report().say("phase", "it was timed");
    const std::vector<Group> groups = by_shape(plugin.rows());
    plugin.report().say_figure("load_ms", plugin.loading().ms);
    plugin.report().say_figure("rows_tried", static_cast<double>(plugin.rows().size()));
    if (!groups.empty()) plugin.report().say_figure("row_ns", nanoseconds_a_row(plugin.model(), full_block(groups)));
}

class Trial {
public:
    Trial(PluginUnderTest& plugin, std::vector<const Rule*> rules) : plugin_(plugin), rules_(std::move(rules)) {}

    // False where not every rule could be tried.
    bool run() {
        for (const Rule* rule : rules_) {
            if (rule == nullptr || rule->tries == nullptr) continue;
            plugin_.report().say("rule", rule->id);
            if (const char* unmet = unmet_need_of(*rule))
                plugin_.report().say("not-tried", std::string("needs ") + unmet);
            else if (!try_one(*rule))
                return false;
        }
        // Times break no rule; they are measured only for a plugin that can be called.
        if (plugin_.options().many_orders > 0 && held_.count("evaluate.answers") != 0) measure(plugin_);
        return true;
    }

private:
    bool is_asked(std::string_view id) const {
        return std::any_of(rules_.begin(), rules_.end(), [&](const Rule* rule) { return rule && rule->id == id; });
    }

    // The first needed rule that does not hold; null where all hold.
    const char* unmet_need_of(const Rule& rule) const {
        const auto found = std::find_if(rule.needs.begin(), rule.needs.end(),
                                        [&](const char* id) { return is_asked(id) && held_.count(id) == 0; });
        return found == rule.needs.end() ? nullptr : *found;
    }

    // False where no further rule can be tried.
    bool try_one(const Rule& rule) {
        try {
            const Violation wrong = rule.tries(plugin_);
            if (!wrong) held_.insert(rule.id);
            plugin_.report().say(wrong ? "broken" : "holds", wrong.value_or(""));
            return true;
        } catch (const ModelError& error) {
            plugin_.report().say("broken", error.what());
            return true;
        } catch (const std::exception& error) {
            plugin_.report().say("died", std::string(survives) + " could not continue: " + error.what());
        }
        return false;
    }

    PluginUnderTest& plugin_;
    std::vector<const Rule*> rules_;
    std::set<std::string> held_;
};

// Ends the process as the host's own process ends, so that destructors of the plugin's static objects run: they may
// hang, crash or print as well. The objects of this function's callers are not destroyed.
[[noreturn]] void end_with_destructors(const sandbox::ChildReport& report) {
    // Never destroyed: destructors of the plugin run after those of this program.
    static const std::string& phase = *new std::string("its destructors ran");
    report.say("phase", phase);
    const sandbox::CurrentTask doing(phase);
    report.say("end");
    // The leak checker of AddressSanitizer makes system calls that are not allowed here.
    if (sandbox::has_address_sanitizer) ::_exit(0);
    std::exit(0);
}

}  // namespace

std::vector<std::string> words_of(const std::string& file, const TrialRequest& options) {
    const auto whole_seconds = std::chrono::duration_cast<std::chrono::seconds>(options.limits.whole).count() + 1;
    std::vector<std::string> result = {trial_word,
                                       file,
                                       std::to_string(whole_seconds),
                                       std::to_string(options.trial.seed),
                                       std::to_string(options.trial.orders),
                                       options.trial.settings == Settings::drawn ? drawn_word : default_word,
                                       std::to_string(options.trial.many_orders)};
    for (const Rule* rule : options.rules) result.emplace_back(rule->id);
    return result;
}

std::optional<int> run_trial(int count, const char* const* words) {
    if (count <= TrialArgument::first_rule || std::string_view(words[TrialArgument::inner]) != trial_word)
        return std::nullopt;
    sandbox::end_with_parent();
    const TrialOptions options{
        std::strtoull(words[TrialArgument::seed], nullptr, 10),
        std::strtoull(words[TrialArgument::orders], nullptr, 10),
        std::string_view(words[TrialArgument::settings]) == drawn_word ? Settings::drawn : Settings::by_default,
        std::strtoull(words[TrialArgument::many_orders], nullptr, 10)};
    std::vector<const Rule*> rules;
    for (int i = TrialArgument::first_rule; i < count; ++i) rules.push_back(find_rule(words[i]));

    sandbox::limit_resources();
    sandbox::limit_processor_time(std::chrono::seconds(std::strtol(words[TrialArgument::seconds], nullptr, 10)));
    static_cast<void>(fields::is_unit_of_library("m"));  // reads its tables before files can no longer be opened
    const sandbox::ChildReport report(report_descriptor);
    sandbox::catch_signals(report, {survives, keeps_to_itself});
    sandbox::forbid_calls();
    const auto file = contract::PluginFile::handed_over(words[TrialArgument::file_name], file_descriptor);
    PluginUnderTest plugin(file, report, options);
    if (!Trial(plugin, std::move(rules)).run()) ::_exit(1);
    end_with_destructors(report);
}

}  // namespace flutebook::plugin_check
