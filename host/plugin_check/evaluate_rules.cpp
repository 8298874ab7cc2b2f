// The rules of the group `evaluate`: every call gives valid results that depend on the row alone, and touches nothing
// but its rows. Also the mass balance, which every row must keep.
#include "host/plugin_check/rule_groups.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <numeric>
#include <optional>
#include <thread>

#include "host/plugin_check/generated_order.hpp"
#include "host/plugin_check/plugin_under_test.hpp"
#include "host/plugin_check/row_checks.hpp"

namespace flutebook::plugin_check {
namespace {

using contract::Model;

constexpr std::size_t threads = 4;
constexpr std::size_t rounds_of_a_thread = 3;

// The first error that `wrong` finds in any row, evaluated in blocks as the engine does.
Violation first_wrong(PluginUnderTest& plugin, Violation (*wrong)(const Model&, const TrialRow&, const RowOutput&)) {
    plugin.report().say("phase", "it evaluated");
    const Model& model = plugin.model();
    for (const Group& group : by_shape(plugin.rows())) {
        const std::vector<RowOutput> written = evaluate(model, group, usual_block);
        for (std::size_t r = 0; r < group.size(); ++r)
            if (auto found = wrong(model, *group[r], written[r])) return found;
    }
    return std::nullopt;
}

// The same rows in the same order, in blocks of another size.
Violation first_difference(const Model& model, const Group& group, const std::vector<RowOutput>& expected,
                           std::size_t size) {
    const std::vector<RowOutput> now = evaluate(model, group, size);
    for (std::size_t r = 0; r < group.size(); ++r)
        if (auto found = difference(model, *group[r], expected[r], now[r])) return found;
    return std::nullopt;
}

void shuffle(std::vector<std::size_t>& places, Draws& draws) {
    for (std::size_t i = places.size(); i > 1; --i) std::swap(places[i - 1], places[draws.index(i)]);
}

// The rows of one block in other orders: reversed, then shuffled.
Violation first_difference_turned(const Model& model, const Group& block, Draws& draws) {
    const std::vector<RowOutput> expected = evaluate(model, block, usual_block);
    std::vector<std::size_t> places(block.size());
    std::iota(places.begin(), places.end(), std::size_t{0});
    std::reverse(places.begin(), places.end());
    for (int turn = 0; turn < 3; ++turn) {
        Group turned;
        std::vector<RowOutput> expected_turned;
        for (const std::size_t place : places) {
            turned.push_back(block[place]);
            expected_turned.push_back(expected[place]);
        }
        if (auto found = first_difference(model, turned, expected_turned, usual_block)) return found;
        shuffle(places, draws);
    }
    return std::nullopt;
}

// The work of one thread: all groups, each thread beginning with another group.
Violation compare_on_a_thread(const Model& model, const std::vector<Group>& groups,
                              const std::vector<std::vector<RowOutput>>& expected, std::size_t first) {
    for (std::size_t i = 0; i < rounds_of_a_thread * groups.size(); ++i) {
        const std::size_t g = (first + i) % groups.size();
        if (auto found = first_difference(model, groups[g], expected[g], usual_block)) return found;
    }
    return std::nullopt;
}

// What a rule says of one call on guarded memory.
using Judge = Violation (*)(const TrialBlock&, const CallOutcome&, const Group&);

std::string in_block(const Group& block) {
    return fmt::format("in a block of {}: {}", block.size(), block.front()->name);
}

Violation wrote_to_inputs(const TrialBlock& trial_block, const CallOutcome& outcome, const Group& block) {
    const auto fault = outcome.fault_address ? trial_block.find(*outcome.fault_address) : std::nullopt;
    if (!fault || !fault->is_input || fault->is_beside) return std::nullopt;
    return fmt::format("wrote to {}, which it may only read, {}", fault->column, in_block(block));
}

Violation left_its_rows(const TrialBlock& trial_block, const CallOutcome& outcome, const Group& block) {
    if (outcome.fault_address) {
        const auto fault = trial_block.find(*outcome.fault_address);
        return fmt::format("accessed {}, {}",
                           fault ? "memory past its rows, beside " + fault->column : "memory that it did not receive",
                           in_block(block));
    }
    if (const auto where = trial_block.strayed())
        return fmt::format("wrote past its rows, beside {}, {}", *where, in_block(block));
    return std::nullopt;
}

// Tries blocks of the first rows of a full block, in each size. The memory ends at most seven rows after a block, and
// exactly with every eighth block.
Violation first_error(const Model& model, const Group& full, const std::vector<std::size_t>& sizes, Judge judge) {
    for (const GuardPages guards : {GuardPages::after, GuardPages::before})
        for (auto size = sizes.begin(); size != sizes.end();) {
            const std::size_t capacity = capacity_for(*size);
            TrialBlock trial_block(model, full.front()->shape, capacity, guards);
            for (; size != sizes.end() && capacity_for(*size) == capacity; ++size) {
                const Group block(full.begin(), full.begin() + static_cast<std::ptrdiff_t>(*size));
                const CallOutcome outcome = call(trial_block, block);
                if (auto found = judge(trial_block, outcome, block)) return found;
            }
        }
    return std::nullopt;
}

// Every number of rows for one shape; only the critical numbers for the others.
Violation first_error(PluginUnderTest& plugin, Judge judge) {
    std::vector<std::size_t> every(usual_block);
    for (std::size_t i = 0; i < every.size(); ++i) every[i] = i + 1;
    std::vector<std::size_t> sizes = every;
    for (const Group& group : by_shape(plugin.rows())) {
        plugin.report().say("phase", "it evaluated");
        if (auto found = first_error(plugin.model(), repeated(group, usual_block), sizes, judge)) return found;
        sizes = {1, 7, 8, usual_block - 1, usual_block};
    }
    return std::nullopt;
}

// The first recorded call, on this thread.
Violation first_recorded(const Model& model, const std::vector<Group>& groups,
                         const char* (sandbox::CallNotes::*recorded)() const) {
    for (const Group& group : groups) {
        TrialBlock trial_block(model, group.front()->shape, usual_block, GuardPages::none);
        for (const Group& block : cut(group, usual_block)) {
            const CallOutcome outcome = call(trial_block, block);
            if (const char* found = (outcome.notes.*recorded)())
                return fmt::format("called {} {}", found, in_block(block));
        }
    }
    return std::nullopt;
}

// On the thread that loaded the plugin, and on a new one.
Violation first_recorded(PluginUnderTest& plugin, const char* (sandbox::CallNotes::*recorded)() const) {
    sandbox::watch_calls();
    const std::vector<Group> groups = by_shape(plugin.rows());
    Violation here = first_recorded(plugin.model(), groups, recorded);
    if (here) return here;
    std::jthread([&] { here = first_recorded(plugin.model(), groups, recorded); }).join();
    return here ? Violation(*here + ", on another thread") : std::nullopt;
}

}  // namespace

Violation try_answers(PluginUnderTest& plugin) {
    const Model& model = plugin.model();
    const std::vector<Group> groups = by_shape(plugin.rows());
    plugin.report().say("phase", "it evaluated");
    if (groups.empty()) return "accepts no order: each of those tried lies outside a range that it declares for a need";
    // One row at a time first, so that an error names its row.
    for (const std::size_t size : {std::size_t{1}, usual_block})
        for (const Group& group : groups) {
            TrialBlock trial_block(model, group.front()->shape, usual_block, GuardPages::none);
            for (const Group& block : cut(group, size))
                if (auto found = wrong_answer(model, trial_block, block)) return found;
        }
    return std::nullopt;
}

Violation try_numbers(PluginUnderTest& plugin) {
    return first_wrong(plugin, wrong_number);
}

Violation try_ranges(PluginUnderTest& plugin) {
    return first_wrong(plugin, wrong_range);
}

Violation try_balance(PluginUnderTest& plugin) {
    return first_wrong(plugin, wrong_balance);
}

Violation try_recovery(PluginUnderTest& plugin) {
    return first_wrong(plugin, wrong_recovery);
}

Violation try_state(PluginUnderTest& plugin) {
    const auto changed_now = [&] {
        return sandbox::first_difference(plugin.loading().after, sandbox::process_state());
    };
    auto changed = changed_now();
    // A thread that has been joined may be listed for a moment longer.
    for (int look = 0; changed && look < 20; ++look) {
        std::this_thread::sleep_for(std::chrono::milliseconds(1));
        changed = changed_now();
    }
    if (!changed) return std::nullopt;
    return *changed + " while it evaluated";
}

Violation try_floating_point(PluginUnderTest& plugin) {
    const Model& model = plugin.model();
    for (const Group& group : by_shape(plugin.rows())) {
        TrialBlock trial_block(model, group.front()->shape, usual_block, GuardPages::none);
        for (const Group& block : cut(group, usual_block))
            if (const CallOutcome outcome = call(trial_block, block); outcome.changed)
                return "changed " + *outcome.changed + " and did not restore it: " + block[0]->name;
    }
    return std::nullopt;
}

Violation try_repeats(PluginUnderTest& plugin) {
    const Model& model = plugin.model();
    const std::vector<Group> groups = by_shape(plugin.rows());
    std::vector<std::vector<RowOutput>> expected;
    for (const Group& group : groups) expected.push_back(evaluate(model, group, usual_block));
    for (std::size_t g = 0; g < groups.size(); ++g)
        if (auto found = first_difference(model, groups[g], expected[g], usual_block)) return found;
    return std::nullopt;
}

Violation try_order(PluginUnderTest& plugin) {
    const Model& model = plugin.model();
    Draws draws(plugin.options().seed);
    for (const Group& group : by_shape(plugin.rows()))
        // Within one block: another rule tries blocks of other sizes.
        for (const Group& block : cut(group, usual_block))
            if (auto found = first_difference_turned(model, block, draws)) return found;
    return std::nullopt;
}

Violation try_blocks(PluginUnderTest& plugin) {
    const Model& model = plugin.model();
    for (const Group& group : by_shape(plugin.rows())) {
        const std::vector<RowOutput> expected = evaluate(model, group, usual_block);
        for (const std::size_t size : {std::size_t{1}, std::size_t{2}, std::size_t{3}, std::size_t{7}, std::size_t{64}})
            if (auto found = first_difference(model, group, expected, size)) return found;
    }
    return std::nullopt;
}

Violation try_threads(PluginUnderTest& plugin) {
    const Model& model = plugin.model();
    const std::vector<Group> groups = by_shape(plugin.rows());
    std::vector<std::vector<RowOutput>> expected;
    for (const Group& group : groups) expected.push_back(evaluate(model, group, usual_block));
    std::vector<Violation> wrong(threads);
    {
        std::vector<std::jthread> running;
        for (std::size_t t = 0; t < threads; ++t)
            running.emplace_back(
                [&, t] { wrong[t] = compare_on_a_thread(model, groups, expected, t * groups.size() / threads); });
    }
    const auto found = std::find_if(wrong.begin(), wrong.end(), [](const Violation& each) { return each.has_value(); });
    return found == wrong.end() ? std::nullopt : *found;
}

Violation try_inputs(PluginUnderTest& plugin) {
    return first_error(plugin, wrote_to_inputs);
}

Violation try_bounds(PluginUnderTest& plugin) {
    return first_error(plugin, left_its_rows);
}

Violation try_allocation(PluginUnderTest& plugin) {
    return first_recorded(plugin, &sandbox::CallNotes::allocation);
}

Violation try_apart(PluginUnderTest& plugin) {
    return first_recorded(plugin, &sandbox::CallNotes::outside_call);
}

}  // namespace flutebook::plugin_check
