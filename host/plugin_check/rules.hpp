// The rules that a plugin must keep: each has a name, a sentence, and a function that tries it.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace flutebook::plugin_check {

class PluginUnderTest;

/// What the plugin did wrong, as the predicate of a sentence: "left web.length without a number: generated order 3
/// ...". Nothing where the rule holds.
using Violation = std::optional<std::string>;

struct Rule {
    const char* id;        // "evaluate.repeats"; the part before the point is its group
    const char* sentence;  // what is true where the rule holds
    Violation (*tries)(PluginUnderTest&);
    std::vector<const char*> needs;  // the rules that must hold for this one to be tried

    [[nodiscard]] std::string group() const;
    /// Whether the text of a broken rule is the message with which the host itself refuses the file.
    [[nodiscard]] bool is_in_hosts_words() const;
};

/// Changes with the rules and with how they are tried: a file that passed the rules of another number is tried again.
inline constexpr int rule_set = 3;

/// In the order in which they are tried and shown, group by group. The rules of the group `conduct` have no function:
/// all other rules try them.
[[nodiscard]] const std::vector<Rule>& rules();

/// Null where there is none.
[[nodiscard]] const Rule* find_rule(const std::string& id);

// The rules that a plugin breaks when it ends its process or must be stopped.
inline constexpr const char* survives = "conduct.survives";
inline constexpr const char* comes_back = "conduct.comes-back";
inline constexpr const char* takes_little = "conduct.memory";
inline constexpr const char* keeps_to_itself = "conduct.alone";
}  // namespace flutebook::plugin_check
