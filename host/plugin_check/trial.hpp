// A plugin's file put to the rules in a process apart: whatever it does there, this process hears of it and goes on.
#pragma once

#include <cstddef>
#include <cstdint>
#include <functional>
#include <string>
#include <vector>

#include "host/contract/plugin_file.hpp"
#include "host/plugin_check/rules.hpp"
#include "host/plugin_check/subject.hpp"
#include "host/sandbox/watch.hpp"

namespace flutebook::plugin_check {

struct RuleFinding {
    enum class State { holds, broken, not_tried };
    const Rule* rule;
    State state;
    std::string text;  // of a broken rule: what the plugin did; of one not tried: why; of one that holds: what was seen
    std::size_t orders = 0;  // of a broken rule: how many made orders bring it out, where it is known; else 0
};

/// Something measured on the way, to be told and not judged.
struct PluginMeasure {
    std::string name;
    double value;
};

struct CheckFindings {
    std::vector<RuleFinding> rules;  // those that were asked, in their order
    std::vector<PluginMeasure> figures;

    /// The first broken rule; null where all that were tried hold.
    [[nodiscard]] const RuleFinding* broken() const;
};

struct CheckOptions {
    std::string program;  // the host's own, or another that has its inner words
    std::vector<const Rule*> rules;
    Effort effort;
    sandbox::Limits limits;
};

/// What is asked before a file is trusted: few orders, little time.
[[nodiscard]] CheckOptions asked_for_trust(std::string program);

/// All rules, over so many orders where many are called for.
[[nodiscard]] CheckOptions asked_for_check(std::string program, std::uint64_t seed, std::size_t many_orders);

/// Hears of each rule as it is begun.
using Watcher = std::function<void(const Rule&)>;

/// Any thread. Throws ModelError where no child process can be had.
[[nodiscard]] CheckFindings try_plugin(const contract::PluginFile& file, const CheckOptions& asked,
                                       const Watcher& watcher = {});

}  // namespace flutebook::plugin_check
