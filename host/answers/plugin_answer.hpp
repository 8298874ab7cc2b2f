// What the questions about plugins answer: which models take what from which, what a plugin says of itself, what its
// check found and what a new one consists of. Plain values.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

#include "host/contract/model.hpp"
#include "host/engine/graph/graph.hpp"

namespace flutebook::answers {

/// What a link takes its number from.
struct Feed {
    enum class Kind { fact, model, setting };
    Kind kind;
    std::string model;  // empty of a fact
    std::string name, unit;
};

[[nodiscard]] Feed feed_of(const engine::Graph& graph, const engine::Source& source);

/// The ids of the models that take a model's provide, in order of evaluation, each once; "host" last where the host
/// itself stands on it.
[[nodiscard]] std::vector<std::string> takers_of(const engine::Graph& graph, std::size_t model, std::size_t provide);

struct DescribedModel {
    contract::Model model;
    std::vector<bool> need_is_fact;  // by need: given by the host itself, not by another model

    /// Whether a provided name takes the place of a fact, where a plant prefers this model for it.
    [[nodiscard]] bool replaces_fact(const contract::Name& provided) const;
    /// Whether the model both needs and provides a name: it then gives its own in place of what it gets.
    [[nodiscard]] bool replaces(const contract::Name& name) const;
};

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

/// What stands in the new folder, by path from it, in order.
struct NewPlugin {
    std::vector<std::string> files;
    std::string prefix;  // where this program and its SDK are installed: CMake's prefix path
};

}  // namespace flutebook::answers
