#include "host/plugin_check/evaluate_rules.hpp"

#include <algorithm>
#include <numeric>
#include <optional>
#include <thread>

#include "host/plugin_check/draws.hpp"
#include "host/plugin_check/rounds.hpp"
#include "host/plugin_check/subject.hpp"

namespace flutebook::plugin_check {
namespace {

using contract::Model;

constexpr std::size_t threads = 4;
constexpr std::size_t rounds_of_a_thread = 3;

// Every row's results as the engine would have them, held against what `wrong` says of each.
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

// The same rows in the same order, but in other blocks.
Wrong first_difference(const Model& model, const Group& group, const std::vector<Written>& expected, std::size_t size) {
    const std::vector<Written> now = evaluate(model, group, size);
    for (std::size_t r = 0; r < group.size(); ++r)
        if (auto found = difference(model, *group[r], expected[r], now[r])) return found;
    return std::nullopt;
}

void shuffle(std::vector<std::size_t>& places, Draws& draws) {
    for (std::size_t i = places.size(); i > 1; --i) std::swap(places[i - 1], places[draws.index(i)]);
}

// The rows of one block in other orders: from behind, then shuffled.
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

// One thread's share: all groups, each thread beginning with another.
Wrong take_turn(const Model& model, const std::vector<Group>& groups, const std::vector<std::vector<Written>>& expected,
                std::size_t first) {
    for (std::size_t i = 0; i < rounds_of_a_thread * groups.size(); ++i) {
        const std::size_t g = (first + i) % groups.size();
        if (auto found = first_difference(model, groups[g], expected[g], usual_block)) return found;
    }
    return std::nullopt;
}

}  // namespace

Wrong try_answers(Subject& subject) {
    const Model& model = subject.model();
    const std::vector<Group> groups = by_shape(subject.rows());
    subject.report().say("phase", "it evaluated");
    if (groups.empty()) return "takes no order: each of those tried lies outside a range that it declares for a need";
    // Alone first, so that the row is known by name.
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
                return "changed " + *answer.changed + " and left it so: " + block[0]->name;
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
        // Within their block: whether the size of a block matters is another rule's.
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
                [&, t] { wrong[t] = take_turn(model, groups, expected, t * groups.size() / threads); });
    }
    const auto found = std::find_if(wrong.begin(), wrong.end(), [](const Wrong& each) { return each.has_value(); });
    return found == wrong.end() ? std::nullopt : *found;
}

}  // namespace flutebook::plugin_check
