// Tries the rules on a plugin's file in a child process. Whatever the plugin does there, this process gets a report and
// continues.
#pragma once

#include <cstddef>
#include <cstdint>
#include <functional>
#include <string>
#include <vector>

#include "host/contract/plugin_file.hpp"
#include "host/plugin_check/plugin_under_test.hpp"
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
    std::vector<RuleFinding> rules;  // those of CheckOptions, in order
    std::vector<PluginMeasure> figures;

    /// The first broken rule; null where there is none.
    [[nodiscard]] const RuleFinding* broken() const;
};

struct CheckOptions {
    std::string program;  // the host's program, or another that calls run_trial()
    std::vector<const Rule*> rules;
    TrialOptions trial;
    sandbox::Limits limits;
};

/// For the check before a file is trusted: few orders, little time.
[[nodiscard]] CheckOptions asked_for_trust(std::string program);

/// All rules, with so many orders for the rule of many orders.
[[nodiscard]] CheckOptions asked_for_check(std::string program, std::uint64_t seed, std::size_t many_orders);

/// Is called with each rule before it is tried.
using Watcher = std::function<void(const Rule&)>;

/// Any thread. Throws ModelError where no child process can be started.
[[nodiscard]] CheckFindings try_plugin(const contract::PluginFile& file, const CheckOptions& options,
                                       const Watcher& watcher = {});

}  // namespace flutebook::plugin_check
