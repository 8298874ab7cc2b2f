// Tries the rules on a plugin's file in a child process. Whatever the plugin does there, this process gets a report and
// continues.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

#include "host/contract/plugin_file.hpp"
#include "host/plugin_check/plugin_under_test.hpp"
#include "host/plugin_check/rules.hpp"
#include "host/plugin_check/trial_report.hpp"
#include "host/sandbox/watch.hpp"

namespace flutebook::plugin_check {

struct TrialRequest {
    std::string program;  // the host's program, or another that calls run_trial()
    std::vector<const Rule*> rules;
    TrialOptions trial;
    sandbox::ChildLimits limits;
};

/// For the check before a file is trusted: all rules, with few orders and little time.
[[nodiscard]] TrialRequest asked_for_trust(std::string program);

/// All rules, with so many orders for the rule of many orders.
[[nodiscard]] TrialRequest asked_for_check(std::string program, std::uint64_t seed, std::size_t many_orders);

/// Any thread. Throws ModelError where no child process can be started.
[[nodiscard]] CheckFindings try_plugin(const contract::PluginFile& file, const TrialRequest& options,
                                       const Watcher& watcher = {});

}  // namespace flutebook::plugin_check
