#include "host/plugin_check/trial.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <csignal>
#include <cstdlib>
#include <system_error>

#include "host/base/errors.hpp"
#include "host/plugin_check/child_process_main.hpp"
#include "host/plugin_check/guarded.hpp"
#include "host/sandbox/build.hpp"
#include "host/sandbox/child.hpp"

namespace flutebook::plugin_check {
namespace {

using namespace std::chrono_literals;
using State = RuleFinding::State;

constexpr std::size_t most_resident = std::size_t{512} << 20;
constexpr std::size_t orders_for_trust = 24;
constexpr std::size_t orders_for_check = 60;
constexpr sandbox::Limits check_limits{600s, 10s * sandbox::slowness, most_resident};

// Turns the report of the child into findings.
class ReportReader {
public:
    ReportReader(const CheckOptions& options, const Watcher& watcher) : watcher_(watcher) {
        for (const Rule* rule : options.rules) findings_.rules.push_back({rule, State::not_tried, ""});
    }

    void take(const sandbox::ChildMessage& message) {
        if (message.word == "phase") phase_ = message.text;
        if (message.word == "rule") begin(message.text);
        if (message.word == "note" && at_ != nullptr) at_->text = message.text;
        if (message.word == "orders" && at_ != nullptr) at_->orders = std::strtoull(message.text.c_str(), nullptr, 10);
        if (message.word == "holds") conclude(State::holds, at_ == nullptr ? "" : at_->text);
        if (message.word == "broken") conclude(State::broken, message.text);
        if (message.word == "not-tried") conclude(State::not_tried, message.text);
        if (message.word == "died") died_of(message.text.substr(0, message.text.find(' ')), rest(message.text));
        if (message.word == "figure")
            findings_.figures.push_back(
                {message.text.substr(0, message.text.find(' ')), std::atof(rest(message.text).c_str())});
        if (message.word == "end") is_complete_ = true;
    }

    CheckFindings conclude(const sandbox::Ended& ended, sandbox::Stopped stopped, const sandbox::Limits& limits) {
        if (stopped == sandbox::Stopped::out_of_time || ended.signal == SIGXCPU)
            died_of(comes_back,
                    fmt::format("did not come back within {} s while {}",
                                static_cast<double>(std::min(limits.whole, limits.silence).count()) / 1000, phase_));
        else if (stopped == sandbox::Stopped::out_of_memory)
            died_of(takes_little, fmt::format("took more than {} MB while {}", limits.resident_bytes >> 20U, phase_));
        else if (!is_complete_ && ended.signal != 0)
            died_of(survives, fmt::format("crashed ({}) while {}", sandbox::signal_name(ended.signal), phase_));
        else if (!is_complete_)
            died_of(survives, fmt::format("ended the process with code {} while {}", ended.code, phase_));
        for (RuleFinding& finding : findings_.rules)
            if (finding.rule->tries == nullptr && finding.state == State::not_tried) finding.state = State::holds;
        return std::move(findings_);
    }

private:
    static std::string rest(const std::string& text) {
        const auto space = text.find(' ');
        return space == std::string::npos ? "" : text.substr(space + 1);
    }

    RuleFinding* find(const std::string& id) {
        const auto found = std::find_if(findings_.rules.begin(), findings_.rules.end(),
                                        [&](const RuleFinding& rule_finding) { return rule_finding.rule->id == id; });
        return found == findings_.rules.end() ? nullptr : &*found;
    }

    void begin(const std::string& id) {
        at_ = find(id);
        if (at_ != nullptr && watcher_) watcher_(*at_->rule);
    }

    void conclude(State state, const std::string& text) {
        if (at_ == nullptr) return;
        at_->state = state;
        at_->text = text;
        at_ = nullptr;
    }

    // The current rule and all rules after it count as not tried.
    void died_of(const std::string& rule, const std::string& text) {
        if (is_complete_) return;
        is_complete_ = true;
        for (RuleFinding& finding : findings_.rules)
            if (finding.rule->tries != nullptr && finding.state == State::not_tried)
                finding.text = fmt::format("needs {}", rule);
        if (find(rule) == nullptr) findings_.rules.push_back({find_rule(rule), State::not_tried, ""});
        if (RuleFinding* broken = find(rule)) *broken = {broken->rule, State::broken, text};
    }

    const Watcher& watcher_;
    CheckFindings findings_;
    RuleFinding* at_ = nullptr;
    std::string phase_ = "it started";
    bool is_complete_ = false;
};

}  // namespace

const RuleFinding* CheckFindings::broken() const {
    const auto found = std::find_if(rules.begin(), rules.end(), [](const RuleFinding& rule_finding) {
        return rule_finding.state == State::broken;
    });
    return found == rules.end() ? nullptr : &*found;
}

CheckOptions asked_for_trust(std::string program) {
    const auto whole = 2s * sandbox::slowness;
    return {std::move(program),
            rules_of_trust(),
            {1, orders_for_trust, Settings::by_default},
            {whole, whole, most_resident}};
}

CheckOptions asked_for_check(std::string program, std::uint64_t seed, std::size_t many_orders) {
    CheckOptions result{std::move(program), {}, {seed, orders_for_check, Settings::drawn, many_orders}, check_limits};
    for (const Rule& rule : rules()) result.rules.push_back(&rule);
    return result;
}

CheckFindings try_plugin(const contract::PluginFile& file, const CheckOptions& options, const Watcher& watcher) {
    ReportReader reader(options, watcher);
    sandbox::Listener listener([&](const sandbox::ChildMessage& message) { reader.take(message); });
    try {
        const sandbox::WatchedEnd child_end = sandbox::run_watched(options.program, words_of(file.name(), options),
                                                                   file.descriptor(), listener, options.limits);
        return reader.conclude(child_end.ended, child_end.stopped, options.limits);
    } catch (const std::system_error& error) {
        throw ModelError(fmt::format("{}: could not be tried: {}; allow the program to start processes", file.where(),
                                     error.what()));
    }
}

}  // namespace flutebook::plugin_check
