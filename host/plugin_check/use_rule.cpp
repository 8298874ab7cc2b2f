#include "host/plugin_check/use_rule.hpp"

#include <fmt/format.h>

#include "host/plugin_check/rounds.hpp"
#include "host/plugin_check/subject.hpp"

namespace flutebook::plugin_check {
namespace {

using contract::Model;
using contract::Range;

constexpr std::size_t orders = 400;
constexpr std::size_t swaps = 3;  // with other rows of the same shape
constexpr std::size_t draws_inside = 2;

// Where an input's values stand in a row, and what they may be besides those of other rows.
struct FuzzInput {
    std::string name;
    std::vector<std::vector<double>> TrialRow::*list;
    std::size_t place;
    std::optional<Range> free;  // nothing: only what made orders have may be relied on
    bool is_choice;
};

std::vector<FuzzInput> inputs_of(const Model& model) {
    std::vector<FuzzInput> result;
    for (std::size_t n = 0; n < model.needs.size(); ++n) {
        const contract::Name& need = model.needs[n];
        result.push_back({"the need " + need.name, &TrialRow::needs, n,
                          known_place(need) ? std::nullopt : std::optional(need.range), false});
    }
    for (std::size_t s = 0; s < model.settings.size(); ++s)
        result.push_back({"the setting " + model.settings[s].name, &TrialRow::settings, s, model.settings[s].range,
                          !model.settings[s].choices.empty()});
    return result;
}

double free_value(const FuzzInput& input, std::size_t way, Draws& draws) {
    if (way == 0) return input.free->low;
    if (way == 1) return input.free->high;
    return input.is_choice ? draws.whole(input.free->low, input.free->high) : inside(draws, *input.free);
}

// The rows of a group with other values of one input: another row's, or, where it is free, any that it may have.
std::vector<TrialRow> varied(const Group& group, const FuzzInput& input, std::size_t way, Draws& draws) {
    std::vector<TrialRow> result;
    for (const TrialRow* row : group) result.push_back(*row);
    for (std::size_t r = 0; r < result.size(); ++r) {
        std::vector<double>& values = (result[r].*input.list)[input.place];
        if (way < swaps)
            values = (group[(r + way + 1) % group.size()]->*input.list)[input.place];
        else
            for (double& value : values) value = free_value(input, way - swaps, draws);
    }
    return result;
}

bool moves(const Model& model, const std::vector<Group>& groups, const std::vector<std::vector<Written>>& expected,
           const FuzzInput& input, Draws& draws) {
    const std::size_t ways = input.free ? swaps + 2 + draws_inside : swaps;
    for (std::size_t way = 0; way < ways; ++way)
        for (std::size_t g = 0; g < groups.size(); ++g) {
            const std::vector<TrialRow> rows = varied(groups[g], input, way, draws);
            Group block;
            for (const TrialRow& row : rows) block.push_back(&row);
            if (evaluate(model, block, usual_block) != expected[g]) return true;
        }
    return false;
}

}  // namespace

Wrong try_use(Subject& subject) {
    const Model& model = subject.model();
    Draws draws(subject.effort().seed);
    const std::vector<TrialRow> rows = make_rows(model, draws.seed(), orders, Settings::anywhere);
    const std::vector<Group> groups = by_shape(rows);
    std::vector<std::vector<Written>> expected;
    for (const Group& group : groups) expected.push_back(evaluate(model, group, usual_block));
    std::vector<std::string> unused;
    for (const FuzzInput& input : inputs_of(model)) {
        subject.report().say("phase", input.name + " was varied");
        if (!moves(model, groups, expected, input, draws)) unused.push_back(input.name);
    }
    if (unused.empty()) return std::nullopt;
    return fmt::format("declares and does not use {}: no result of {} rows moved with {}; use it, or do not declare it",
                       fmt::join(unused, ", "), rows.size(), unused.size() == 1 ? "it" : "them");
}

}  // namespace flutebook::plugin_check
