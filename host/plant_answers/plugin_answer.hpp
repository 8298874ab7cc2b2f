// The answers about plugins: which model takes which number from which, how a plugin describes itself, what its check
// found, and the files of a new one. Plain values.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

#include "host/contract/model.hpp"
#include "host/engine/graph/graph.hpp"

namespace flutebook::plant_answers {

/// The origin of the number that a link passes on.
struct Feed {
    enum class Kind { fact, model, setting };
    Kind kind;
    std::string model;  // empty of a fact
    std::string name, unit;
};

[[nodiscard]] Feed feed_of(const engine::Graph& graph, const engine::Source& source);

/// The ids of the models that take a number that a model provides, in order of evaluation, each once; then "host" where
/// the host takes it.
[[nodiscard]] std::vector<std::string> takers_of(const engine::Graph& graph, std::size_t model, std::size_t provide);

struct DescribedModel {
    contract::Model model;
    std::vector<bool> need_is_fact;  // by need: whether the host gives it, not another model

    /// Whether a provided name replaces a fact, where a plant prefers this model for it.
    [[nodiscard]] bool replaces_fact(const contract::Name& provided) const;
    /// Whether the model both needs and provides a name: it replaces the number that it takes by its own.
    [[nodiscard]] bool replaces(const contract::Name& name) const;
};

struct CheckOptions {
    std::string file;
    std::uint64_t seed;
    std::size_t orders;  // number of random orders, for rules that are tested with many
};

struct Checked {
    enum class State { holds, broken, not_tried };
    struct CheckedRule {
        std::string group, id, sentence;
        State state;
        std::string said;   // broken: what the plugin did; not tried: why; holds: what was found, if anything
        std::string again;  // broken: the command that repeats it
    };
    struct CheckFigure {
        std::string name;
        double value;
    };

    CheckOptions asked;
    std::string model, sha256;
    std::vector<CheckedRule> rules;
    std::vector<CheckFigure> figures;

    [[nodiscard]] std::size_t count(State state) const;
    [[nodiscard]] bool has_passed() const { return count(State::broken) == 0; }
};

/// The files of the new folder, by path from it, in order.
struct NewPlugin {
    std::vector<std::string> files;
    std::string prefix;  // where this program and its SDK are installed, for CMake's prefix path
};

}  // namespace flutebook::plant_answers
