// The conformance check of a plugin: every rule that the host knows, tried in a process apart. No plant is opened, and
// the file is loaded nowhere else.
#pragma once

#include <cstddef>
#include <cstdint>
#include <functional>
#include <string>
#include <vector>

namespace flutebook::services {

struct CheckOptions {
    std::string file;
    std::uint64_t seed;
    std::size_t orders;  // made orders, where a rule is tried with many
};

struct Checked {
    enum class State { holds, broken, not_tried };
    struct CheckedRule {
        std::string group, id, sentence;
        State state;
        std::string said;   // broken: what the plugin did; not tried: why; holds: what was seen, if anything
        std::string again;  // broken: the command that shows it again
    };
    struct PluginMeasure {
        std::string name;
        double value;
    };

    CheckOptions asked;
    std::string model, sha256;
    std::vector<CheckedRule> rules;
    std::vector<PluginMeasure> figures;

    [[nodiscard]] std::size_t count(State state) const;
    [[nodiscard]] bool has_passed() const { return count(State::broken) == 0; }
};

/// `begun` hears the name of each rule as it is begun. Throws ModelError where there is no such file, or no process to
/// try it in.
[[nodiscard]] Checked check_plugin(const CheckOptions& asked, const std::function<void(const std::string&)>& begun);

}  // namespace flutebook::services
