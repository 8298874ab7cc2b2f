// The rules that a plugin is tried by: each with a name, a sentence, and what tries it.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace flutebook::plugin_check {

class Subject;

/// What is wrong, as a sentence goes on after "the plugin": "left web.length without a number in made order 3 ...".
using Wrong = std::optional<std::string>;

struct Rule {
    const char* id;        // "evaluate.repeats"; what stands before the point is its group
    const char* sentence;  // what holds where the rule is kept
    Wrong (*tries)(Subject&);
    std::vector<const char*> needs;  // the rules that must hold for this one to be tried
    bool is_asked_for_trust;

    [[nodiscard]] std::string group() const;
    /// What a plugin did against it is told in the words that the host itself would refuse the file with.
    [[nodiscard]] bool is_in_hosts_words() const;
};

/// In the order in which they are tried, and shown; those of one group stand together. Those of the group `conduct` are
/// tried by all the others: they have no function of their own.
[[nodiscard]] const std::vector<Rule>& rules();

/// Null where there is none.
[[nodiscard]] const Rule* find_rule(const std::string& id);

/// The rules that are asked for before a file is trusted.
[[nodiscard]] std::vector<const Rule*> rules_of_trust();

// How a plugin may end its process, and the rule that it breaks by it.
inline constexpr const char* survives = "conduct.survives";
inline constexpr const char* comes_back = "conduct.comes-back";
inline constexpr const char* takes_little = "conduct.memory";
inline constexpr const char* keeps_to_itself = "conduct.alone";
}  // namespace flutebook::plugin_check
