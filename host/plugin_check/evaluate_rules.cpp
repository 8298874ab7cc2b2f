// The rules of the group `evaluate`: every call gives valid results that depend on the row alone, and touches nothing
// but its rows. Also the mass balance, which every row must keep.
#include "host/plugin_check/rule_groups.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <numeric>
#include <optional>
#include <thread>

#include "host/plugin_check/generated_order.hpp"
#include "host/plugin_check/rounds.hpp"
#include "host/plugin_check/subject.hpp"

namespace flutebook::plugin_check {
namespace {

using contract::Model;

constexpr std::size_t threads = 4;
constexpr std::size_t rounds_of_a_thread = 3;

// The first error that `wrong` finds in any row, evaluated in blocks as the engine does.
Wrong first_wrong(Subject& subject, Wrong (*wrong)(const Model&, const TrialRow&, const Written&)) {
    subject.report().say("phase", "it evaluated");
    const Model& model = subject.model();
    for (const Group& group : by_shape(subject.rows())) {
        const std::vector<Written> written = evaluate(model, group, usual_block);
        for (std::size_t r = 0; r < group.size(); ++r)
            if (auto found = wrong(model, *group[r], written[r])) return found;
    }
    return std::nullopt;
}

// The same rows in the same order, in blocks of another size.
Wrong first_difference(const Model& model, const Group& group, const std::vector<Written>& expected, std::size_t size) {
    const std::vector<Written> now = evaluate(model, group, size);
    for (std::size_t r = 0; r < group.size(); ++r)
        if (auto found = difference(model, *group[r], expected[r], now[r])) return found;
    return std::nullopt;
}

void shuffle(std::vector<std::size_t>& places, Draws& draws) {
    for (std::size_t i = places.size(); i > 1; --i) std::swap(places[i - 1], places[draws.index(i)]);
}

// The rows of one block in other orders: reversed, then shuffled.
Wrong first_difference_turned(const Model& model, const Group& block, Draws& draws) {
    const std::vector<Written> expected = evaluate(model, block, usual_block);
    std::vector<std::size_t> places(block.size());
    std::iota(places.begin(), places.end(), std::size_t{0});
    std::reverse(places.begin(), places.end());
    for (int turn = 0; turn < 3; ++turn) {
        Group turned;
        std::vector<Written> expected_turned;
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
Wrong compare_on_a_thread(const Model& model, const std::vector<Group>& groups,
                          const std::vector<std::vector<Written>>& expected, std::size_t first) {
    for (std::size_t i = 0; i < rounds_of_a_thread * groups.size(); ++i) {
        const std::size_t g = (first + i) % groups.size();
        if (auto found = first_difference(model, groups[g], expected[g], usual_block)) return found;
    }
    return std::nullopt;
}

// What a rule says of one call on guarded memory.
using Judge = Wrong (*)(const Stage&, const Answer&, const Group&);

std::string in_block(const Group& block) {
    return fmt::format("in a block of {}: {}", block.size(), block.front()->name);
}

Wrong wrote_to_inputs(const Stage& stage, const Answer& answer, const Group& block) {
    const auto struck = answer.struck ? stage.find(*answer.struck) : std::nullopt;
    if (!struck || !struck->is_input || struck->is_beside) return std::nullopt;
    return fmt::format("wrote to {}, which it may only read, {}", struck->column, in_block(block));
}

Wrong left_its_rows(const Stage& stage, const Answer& answer, const Group& block) {
    if (answer.struck) {
        const auto struck = stage.find(*answer.struck);
        return fmt::format("accessed {}, {}",
                           struck ? "memory past its rows, beside " + struck->column : "memory that it did not receive",
                           in_block(block));
    }
    if (const auto where = stage.strayed())
        return fmt::format("wrote past its rows, beside {}, {}", *where, in_block(block));
    return std::nullopt;
}

// Tries blocks of the first rows of a full block, in each size. The memory ends at most seven rows after a block, and
// exactly with every eighth block.
Wrong first_error(const Model& model, const Group& full, const std::vector<std::size_t>& sizes, Judge judge) {
    for (const Ground ground : {Ground::guarded_after, Ground::guarded_before})
        for (auto size = sizes.begin(); size != sizes.end();) {
            const std::size_t capacity = capacity_for(*size);
            Stage stage(model, full.front()->shape, capacity, ground);
            for (; size != sizes.end() && capacity_for(*size) == capacity; ++size) {
                const Group block(full.begin(), full.begin() + static_cast<std::ptrdiff_t>(*size));
                const Answer answer = call(stage, block);
                if (auto found = judge(stage, answer, block)) return found;
            }
        }
    return std::nullopt;
}

// Every number of rows for one shape; only the critical numbers for the others.
Wrong first_error(Subject& subject, Judge judge) {
    std::vector<std::size_t> every(usual_block);
    for (std::size_t i = 0; i < every.size(); ++i) every[i] = i + 1;
    std::vector<std::size_t> sizes = every;
    for (const Group& group : by_shape(subject.rows())) {
        if (auto found = first_error(subject.model(), repeated(group, usual_block), sizes, judge)) return found;
        sizes = {1, 7, 8, usual_block - 1, usual_block};
    }
    return std::nullopt;
}

// The first recorded call, on this thread.
Wrong first_recorded(const Model& model, const std::vector<Group>& groups,
                     const char* (sandbox::CallNotes::*recorded)() const) {
    for (const Group& group : groups) {
        Stage stage(model, group.front()->shape, usual_block, Ground::open);
        for (const Group& block : cut(group, usual_block)) {
            const Answer answer = call(stage, block);
            if (const char* found = (answer.notes.*recorded)())
                return fmt::format("called {} {}", found, in_block(block));
        }
    }
    return std::nullopt;
}

// On the thread that loaded the plugin, and on a new one.
Wrong first_recorded(Subject& subject, const char* (sandbox::CallNotes::*recorded)() const) {
    sandbox::watch_calls();
    const std::vector<Group> groups = by_shape(subject.rows());
    Wrong here = first_recorded(subject.model(), groups, recorded);
    if (here) return here;
    std::jthread([&] { here = first_recorded(subject.model(), groups, recorded); }).join();
    return here ? Wrong(*here + ", on another thread") : std::nullopt;
}

}  // namespace

Wrong try_answers(Subject& subject) {
    const Model& model = subject.model();
    const std::vector<Group> groups = by_shape(subject.rows());
    subject.report().say("phase", "it evaluated");
    if (groups.empty()) return "accepts no order: each of those tried lies outside a range that it declares for a need";
    // One row at a time first, so that an error names its row.
    for (const std::size_t size : {std::size_t{1}, usual_block})
        for (const Group& group : groups) {
            Stage stage(model, group.front()->shape, usual_block, Ground::open);
            for (const Group& block : cut(group, size))
                if (auto found = wrong_answer(model, stage, block)) return found;
        }
    return std::nullopt;
}

Wrong try_numbers(Subject& subject) {
    return first_wrong(subject, wrong_number);
}

Wrong try_ranges(Subject& subject) {
    return first_wrong(subject, wrong_range);
}

Wrong try_balance(Subject& subject) {
    return first_wrong(subject, wrong_balance);
}

Wrong try_floating_point(Subject& subject) {
    const Model& model = subject.model();
    for (const Group& group : by_shape(subject.rows())) {
        Stage stage(model, group.front()->shape, usual_block, Ground::open);
        for (const Group& block : cut(group, usual_block))
            if (const Answer answer = call(stage, block); answer.changed)
                return "changed " + *answer.changed + " and did not restore it: " + block[0]->name;
    }
    return std::nullopt;
}

Wrong try_repeats(Subject& subject) {
    const Model& model = subject.model();
    const std::vector<Group> groups = by_shape(subject.rows());
    std::vector<std::vector<Written>> expected;
    for (const Group& group : groups) expected.push_back(evaluate(model, group, usual_block));
    for (std::size_t g = 0; g < groups.size(); ++g)
        if (auto found = first_difference(model, groups[g], expected[g], usual_block)) return found;
    return std::nullopt;
}

Wrong try_order(Subject& subject) {
    const Model& model = subject.model();
    Draws draws(subject.effort().seed);
    for (const Group& group : by_shape(subject.rows()))
        // Within one block: another rule tries blocks of other sizes.
        for (const Group& block : cut(group, usual_block))
            if (auto found = first_difference_turned(model, block, draws)) return found;
    return std::nullopt;
}

Wrong try_blocks(Subject& subject) {
    const Model& model = subject.model();
    for (const Group& group : by_shape(subject.rows())) {
        const std::vector<Written> expected = evaluate(model, group, usual_block);
        for (const std::size_t size : {std::size_t{1}, std::size_t{2}, std::size_t{3}, std::size_t{7}, std::size_t{64}})
            if (auto found = first_difference(model, group, expected, size)) return found;
    }
    return std::nullopt;
}

Wrong try_threads(Subject& subject) {
    const Model& model = subject.model();
    const std::vector<Group> groups = by_shape(subject.rows());
    std::vector<std::vector<Written>> expected;
    for (const Group& group : groups) expected.push_back(evaluate(model, group, usual_block));
    std::vector<Wrong> wrong(threads);
    {
        std::vector<std::jthread> running;
        for (std::size_t t = 0; t < threads; ++t)
            running.emplace_back(
                [&, t] { wrong[t] = compare_on_a_thread(model, groups, expected, t * groups.size() / threads); });
    }
    const auto found = std::find_if(wrong.begin(), wrong.end(), [](const Wrong& each) { return each.has_value(); });
    return found == wrong.end() ? std::nullopt : *found;
}

Wrong try_inputs(Subject& subject) {
    return first_error(subject, wrote_to_inputs);
}

Wrong try_bounds(Subject& subject) {
    return first_error(subject, left_its_rows);
}

Wrong try_allocation(Subject& subject) {
    return first_recorded(subject, &sandbox::CallNotes::allocation);
}

Wrong try_apart(Subject& subject) {
    return first_recorded(subject, &sandbox::CallNotes::asked);
}

}  // namespace flutebook::plugin_check
