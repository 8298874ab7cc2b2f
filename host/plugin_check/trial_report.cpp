#include "host/plugin_check/trial_report.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <csignal>
#include <cstdlib>
#include <string_view>
#include <utility>

#include "host/base/characters.hpp"
#include "host/base/quoted_text.hpp"

namespace flutebook::plugin_check {
namespace {

using State = RuleFinding::State;
using sandbox::Stopped;

constexpr std::array<std::string_view, 4> measures = {"load_ms", "rows_tried", "row_ns", "many_rows"};
constexpr std::size_t most_phase = 300;

// The first word, and what follows it after one space.
std::pair<std::string, std::string> split(const std::string& text) {
    const auto space = std::min(text.find(' '), text.size());
    return {text.substr(0, space), space < text.size() ? text.substr(space + 1) : ""};
}

// What can be shown of a text that a plugin printed.
std::string first_line(const std::string& text) {
    std::size_t end = 0;
    while (end < text.size() && base::character_at(text, end).fault == base::CharacterFault::none)
        end += base::character_at(text, end).length;
    return text.substr(0, end);
}

bool is_conduct(const std::string& rule) {
    return rule == survives || rule == comes_back || rule == takes_little || rule == keeps_to_itself;
}

}  // namespace

const RuleFinding* CheckFindings::broken() const {
    const auto found = std::find_if(rules.begin(), rules.end(), [](const RuleFinding& rule_finding) {
        return rule_finding.state == State::broken;
    });
    return found == rules.end() ? nullptr : &*found;
}

bool CheckFindings::has_passed() const {
    return std::all_of(rules.begin(), rules.end(),
                       [](const RuleFinding& rule_finding) { return rule_finding.state == State::holds; });
}

TrialReport::TrialReport(const std::vector<const Rule*>& rules, Watcher watcher) : watcher_(std::move(watcher)) {
    for (const Rule* rule : rules) findings_.rules.push_back({rule, State::not_tried, ""});
    skip_rules_without_a_function();
}

void TrialReport::skip_rules_without_a_function() {
    while (next_ < findings_.rules.size() && findings_.rules[next_].rule->tries == nullptr) ++next_;
}

void TrialReport::take(const sandbox::ChildMessage& message) {
    is_valid_ = is_valid_ && is_next(message);
}

bool TrialReport::is_next(const sandbox::ChildMessage& message) {
    if (message.word == "died") return take_death(message.text);
    if (has_ended_ || death_) return false;
    if (message.word == "rule") return begin(message.text);
    if (message.word == "end") return message.text.empty() && end();
    if (message.word == "figure") return take_figure(message.text);
    if (message.word == "phase") {
        phase_ = message.text.substr(0, most_phase);
        return !message.text.empty();
    }
    if (at_ == nullptr) return false;
    if (message.word == "orders") return count_orders(message.text);
    if (message.word == "holds") return message.text.empty() && conclude(State::holds, at_->text);
    if (message.word == "broken") return conclude(State::broken, message.text);
    if (message.word == "not-tried") return conclude(State::not_tried, message.text);
    if (message.word != "note") return false;
    at_->text = message.text;
    return true;
}

bool TrialReport::begin(const std::string& id) {
    if (at_ != nullptr || next_ == findings_.rules.size() || findings_.rules[next_].rule->id != id) return false;
    at_ = &findings_.rules[next_++];
    skip_rules_without_a_function();
    if (watcher_) watcher_(*at_->rule);
    return true;
}

bool TrialReport::conclude(State state, const std::string& text) {
    if (state != State::holds && text.empty()) return false;
    at_->state = state;
    at_->text = text;
    at_ = nullptr;
    return true;
}

bool TrialReport::count_orders(const std::string& text) {
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), at_->orders);
    return error == std::errc() && end == text.data() + text.size();
}

bool TrialReport::take_death(const std::string& text) {
    const auto [rule, what] = split(text);
    if (death_ || !is_conduct(rule) || what.empty()) return false;
    death_ = Death{rule, what};
    return true;
}

bool TrialReport::take_figure(const std::string& text) {
    const auto words = split(text);
    const std::string& name = words.first;
    const std::string& number = words.second;
    if (std::find(measures.begin(), measures.end(), name) == measures.end() ||
        std::any_of(findings_.figures.begin(), findings_.figures.end(),
                    [&](const PluginMeasure& measure) { return measure.name == name; }))
        return false;
    char* end = nullptr;
    const double value = std::strtod(number.c_str(), &end);
    findings_.figures.push_back({name, value});
    return !number.empty() && end == number.c_str() + number.size() && std::isfinite(value);
}

bool TrialReport::end() {
    has_ended_ = at_ == nullptr && next_ == findings_.rules.size();
    return has_ended_;
}

// The rule that was broken by how the process ended; nothing where it ended well.
std::optional<std::string> TrialReport::overrun(const sandbox::WatchedEnd& child_end,
                                                const sandbox::ChildLimits& limits, std::string& text) const {
    const auto broken = [&](const char* rule, std::string what) {
        text = std::move(what);
        return std::optional<std::string>(rule);
    };
    const sandbox::Ended& ended = child_end.ended;
    if (child_end.stopped == Stopped::false_report || !is_valid_)
        return broken(keeps_to_itself, fmt::format("wrote into the report of its trial while {}", phase_));
    if (death_) return broken(death_->rule.c_str(), death_->text);
    if (child_end.stopped == Stopped::out_of_time || ended.signal == SIGXCPU)
        return broken(comes_back,
                      fmt::format("did not come back within {} s while {}",
                                  static_cast<double>(std::min(limits.whole, limits.silence).count()) / 1000, phase_));
    if (child_end.stopped == Stopped::out_of_memory)
        return broken(takes_little, fmt::format("took more than {} MB while {}", limits.resident_bytes >> 20U, phase_));
    if (ended.signal != 0)
        return broken(survives, fmt::format("crashed ({}) while {}", sandbox::signal_name(ended.signal), phase_));
    if (!has_ended_ || ended.code != 0)
        return broken(survives, fmt::format("ended the process with code {} while {}", ended.code, phase_));
    if (!child_end.printed.empty())
        return broken(keeps_to_itself, "printed a text: found " + base::shown(first_line(child_end.printed)));
    return std::nullopt;
}

CheckFindings TrialReport::conclude(const sandbox::WatchedEnd& child_end, const sandbox::ChildLimits& limits) {
    std::string text;
    if (const auto rule = overrun(child_end, limits, text)) break_rule(*rule, text);
    for (RuleFinding& finding : findings_.rules)
        if (finding.rule->tries == nullptr && finding.state == State::not_tried) finding.state = State::holds;
    return std::move(findings_);
}

// The current rule and all rules after it count as not tried.
void TrialReport::break_rule(const std::string& rule, const std::string& text) {
    for (RuleFinding& finding : findings_.rules)
        if (finding.rule->tries != nullptr && finding.state == State::not_tried && finding.text.empty())
            finding.text = fmt::format("needs {}", rule);
    if (at_ != nullptr) at_->text = fmt::format("needs {}", rule);
    const auto found = std::find_if(findings_.rules.begin(), findings_.rules.end(),
                                    [&](const RuleFinding& rule_finding) { return rule_finding.rule->id == rule; });
    if (found == findings_.rules.end())
        findings_.rules.push_back({find_rule(rule), State::broken, text});
    else
        *found = {found->rule, State::broken, text};
}

}  // namespace flutebook::plugin_check
