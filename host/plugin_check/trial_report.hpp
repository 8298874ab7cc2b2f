// What a child reports about the rules that it tried, as findings.
//
// The marks of the lines show that the child wrote them. Code of the plugin may still have made the child write
// nonsense, so each line must be one that can come next: the rules in their order, each begun and then concluded, and
// an end. Any other line is a failed trial.
#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "host/plugin_check/rules.hpp"
#include "host/sandbox/watch.hpp"

namespace flutebook::plugin_check {

struct RuleFinding {
    enum class State { holds, broken, not_tried };
    const Rule* rule;
    State state;
    std::string text;  // of a broken rule: what the plugin did; of one not tried: why; of one that holds: what was seen
    std::size_t orders = 0;  // of a broken rule: how many generated orders show it, where known; else 0
};

/// A measured value, for information.
struct PluginMeasure {
    std::string name;
    double value;
};

struct CheckFindings {
    std::vector<RuleFinding> rules;  // those of TrialRequest, in order
    std::vector<PluginMeasure> figures;

    /// The first broken rule; null where there is none.
    [[nodiscard]] const RuleFinding* broken() const;

    /// Whether every rule was tried and holds.
    [[nodiscard]] bool has_passed() const;
};

/// Is called with each rule before it is tried.
using Watcher = std::function<void(const Rule&)>;

class TrialReport {
public:
    TrialReport(const std::vector<const Rule*>& rules, Watcher watcher);

    void take(const sandbox::ChildMessage& message);

    /// To be called once, when the child has ended.
    [[nodiscard]] CheckFindings conclude(const sandbox::WatchedEnd& child_end, const sandbox::ChildLimits& limits);

private:
    [[nodiscard]] bool is_next(const sandbox::ChildMessage& message);
    [[nodiscard]] bool begin(const std::string& id);
    [[nodiscard]] bool conclude(RuleFinding::State state, const std::string& text);
    [[nodiscard]] bool count_orders(const std::string& text);
    [[nodiscard]] bool take_death(const std::string& text);
    [[nodiscard]] bool take_figure(const std::string& text);
    [[nodiscard]] bool end();
    [[nodiscard]] std::optional<std::string> overrun(const sandbox::WatchedEnd& child_end,
                                                     const sandbox::ChildLimits& limits, std::string& text) const;
    void skip_rules_without_a_function();
    void break_rule(const std::string& rule, const std::string& text);

    // What ended the trial before its end.
    struct Death {
        std::string rule, text;
    };

    Watcher watcher_;
    CheckFindings findings_;
    std::size_t next_ = 0;       // the rule that may begin next
    RuleFinding* at_ = nullptr;  // the rule that is being tried
    std::string phase_ = "it started";
    std::optional<Death> death_;
    bool has_ended_ = false;
    bool is_valid_ = true;
};

}  // namespace flutebook::plugin_check
