// The rules that try many rows with settings anywhere in their ranges: a model keeps its promises for all of them, and
// every declared input changes a result.
//
// An input may matter only for some values of another, so the rows are many and their settings often lie at an end. An
// input counts as unused only after all rows gave the same bits with other values of it.
#include "host/plugin_check/rule_groups.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "host/plugin_check/plugin_under_test.hpp"
#include "host/plugin_check/row_checks.hpp"

namespace flutebook::plugin_check {
namespace {

using contract::Model;
using contract::Range;

constexpr std::size_t at_a_time = 100;  // orders; each part is reported to the parent

struct FuzzFault {
    std::size_t orders;  // the first so many orders show the fault
    std::string text;
};

// Keeps the fault that the fewest orders show.
void take_earlier(std::optional<FuzzFault>& first, std::size_t orders, Violation wrong) {
    if (wrong && (!first || orders < first->orders)) first = FuzzFault{orders, std::move(*wrong)};
}

// Adds the settings of the row: the fault may depend on them.
std::string with_settings(const Model& model, const TrialRow& row, const std::string& text) {
    std::string result;
    for (std::size_t s = 0; s < model.settings.size(); ++s)
        result += fmt::format("{} {} {}", result.empty() ? ", with" : ",", model.settings[s].name,
                              fmt::join(row.settings[s], " "));
    return text + result;
}

Violation wrong_row(const Model& model, const TrialRow& row, const RowOutput& written) {
    for (const auto judge : {wrong_number, wrong_range, wrong_balance, wrong_recovery})
        if (auto found = judge(model, row, written)) return with_settings(model, row, *found);
    return std::nullopt;
}

// Checks each row, in full blocks.
void try_rows(const Model& model, const Group& group, std::optional<FuzzFault>& first) {
    TrialBlock trial_block(model, group.front()->shape, usual_block, GuardPages::none);
    for (const Group& block : cut(group, usual_block)) {
        const bool answers = !wrong_answer(model, trial_block, block);
        for (std::size_t r = 0; r < block.size() && answers; ++r)
            take_earlier(first, block[r]->order, wrong_row(model, *block[r], trial_block.written(r)));
        for (std::size_t r = 0; r < block.size() && !answers; ++r)
            if (auto found = wrong_answer(model, trial_block, {block[r]}))
                take_earlier(first, block[r]->order, with_settings(model, *block[r], *found));
    }
}

// Evaluates all rows again, in another order and in blocks of another size.
void try_again_otherwise(const Model& model, Group group, Draws& draws, std::size_t orders,
                         std::optional<FuzzFault>& first) {
    const std::vector<RowOutput> expected = evaluate(model, group, usual_block);
    std::vector<std::size_t> places(group.size());
    for (std::size_t i = 0; i < places.size(); ++i) places[i] = i;
    for (std::size_t i = places.size(); i > 1; --i) std::swap(places[i - 1], places[draws.index(i)]);
    Group turned;
    for (const std::size_t place : places) turned.push_back(group[place]);
    const std::vector<RowOutput> now = evaluate(model, turned, 1 + draws.index(usual_block));
    for (std::size_t i = 0; i < places.size(); ++i)
        take_earlier(first, orders, difference(model, *turned[i], expected[places[i]], now[i]));
}

constexpr std::size_t orders_for_use = 400;
constexpr std::size_t swaps = 3;  // of values, with other rows of the same shape
constexpr std::size_t draws_inside = 2;

// Where an input's values are in a row, and which values it may have besides those of other rows.
struct FuzzInput {
    std::string name;
    std::vector<std::vector<double>> TrialRow::*list;
    std::size_t place;
    std::optional<Range> free;  // nothing: only values of generated orders are valid
    bool is_choice;
};

std::vector<FuzzInput> inputs_of(const Model& model) {
    std::vector<FuzzInput> result;
    for (std::size_t n = 0; n < model.needs.size(); ++n) {
        const contract::Name& need = model.needs[n];
        // It goes with the number of plies, so no row of the same shape has another value.
        const bool is_of_shape = need.name == "board.made_here";
        result.push_back({"the need " + need.name, &TrialRow::needs, n,
                          known_place(need) && !is_of_shape ? std::nullopt : std::optional(need.range), is_of_shape});
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

// The rows of a group with other values of one input: another row's, or, where it has a free range, any value in it.
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

bool changes_results(const Model& model, const std::vector<Group>& groups,
                     const std::vector<std::vector<RowOutput>>& expected, const FuzzInput& input, Draws& draws) {
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

Violation try_many_orders(PluginUnderTest& plugin) {
    const Model& model = plugin.model();
    const std::size_t all = plugin.options().many_orders;
    TrialRows source(model, plugin.options().seed, Settings::anywhere);
    Draws draws(plugin.options().seed);
    std::size_t count = 0;
    for (std::size_t done = 0; done < all; done += at_a_time) {
        const std::size_t orders = std::min(all - done, at_a_time);
        plugin.report().say("phase", fmt::format("generated orders from {} on were tried", done + 1));
        const std::vector<TrialRow> rows = source.next(orders);
        count += rows.size();
        std::optional<FuzzFault> first;
        for (const Group& group : by_shape(rows)) try_rows(model, group, first);
        for (const Group& group : by_shape(rows))
            if (!first) try_again_otherwise(model, group, draws, done + orders, first);
        if (!first) continue;
        plugin.report().say("orders", std::to_string(first->orders));
        return first->text;
    }
    plugin.report().say_figure("many_rows", static_cast<double>(count));
    return std::nullopt;
}

Violation try_use(PluginUnderTest& plugin) {
    const Model& model = plugin.model();
    Draws draws(plugin.options().seed);
    const std::vector<TrialRow> rows = make_rows(model, draws.seed(), orders_for_use, Settings::anywhere);
    const std::vector<Group> groups = by_shape(rows);
    std::vector<std::vector<RowOutput>> expected;
    for (const Group& group : groups) expected.push_back(evaluate(model, group, usual_block));
    std::vector<std::string> unused;
    for (const FuzzInput& input : inputs_of(model)) {
        plugin.report().say("phase", input.name + " was varied");
        if (!changes_results(model, groups, expected, input, draws)) unused.push_back(input.name);
    }
    if (unused.empty()) return std::nullopt;
    return fmt::format(
        "declares and does not use {}: no result of {} rows changed with {}; use it, or do not declare it",
        fmt::join(unused, ", "), rows.size(), unused.size() == 1 ? "it" : "them");
}

}  // namespace flutebook::plugin_check
