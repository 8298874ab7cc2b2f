#include "host/plugin_check/call_rules.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <thread>

#include "host/plugin_check/rounds.hpp"
#include "host/plugin_check/subject.hpp"

namespace flutebook::plugin_check {
namespace {

using contract::Model;

// What one call on guarded ground came to, in the words of a rule.
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
        return fmt::format("reached {}, {}",
                           struck ? "past its rows, beside " + struck->column : "for what it was not handed",
                           in_block(block));
    }
    if (const auto where = stage.strayed())
        return fmt::format("wrote past its rows, beside {}, {}", *where, in_block(block));
    return std::nullopt;
}

// Blocks of the first so many rows of a full one, each on ground that ends no later than seven rows after it, so that
// every eighth ends exactly where the ground does.
Wrong first_misstep(const Model& model, const Group& full, const std::vector<std::size_t>& sizes, Judge judge) {
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

// Every number of rows for one shape, the telling ones for all others.
Wrong first_misstep(Subject& subject, Judge judge) {
    std::vector<std::size_t> every(usual_block);
    for (std::size_t i = 0; i < every.size(); ++i) every[i] = i + 1;
    std::vector<std::size_t> sizes = every;
    for (const Group& group : by_shape(subject.rows())) {
        if (auto found = first_misstep(subject.model(), repeated(group, usual_block), sizes, judge)) return found;
        sizes = {1, 7, 8, usual_block - 1, usual_block};
    }
    return std::nullopt;
}

// The first call that was noted, on this thread.
Wrong first_noted(const Model& model, const std::vector<Group>& groups,
                  const char* (sandbox::CallNotes::*noted)() const) {
    for (const Group& group : groups) {
        Stage stage(model, group.front()->shape, usual_block, Ground::open);
        for (const Group& block : cut(group, usual_block)) {
            const Answer answer = call(stage, block);
            if (const char* found = (answer.notes.*noted)()) return fmt::format("called {} {}", found, in_block(block));
        }
    }
    return std::nullopt;
}

// On the thread that loaded the plugin, and on a fresh one.
Wrong first_noted(Subject& subject, const char* (sandbox::CallNotes::*noted)() const) {
    sandbox::watch_calls();
    const std::vector<Group> groups = by_shape(subject.rows());
    Wrong here = first_noted(subject.model(), groups, noted);
    if (here) return here;
    std::jthread([&] { here = first_noted(subject.model(), groups, noted); }).join();
    return here ? Wrong(*here + ", on a thread of its own") : std::nullopt;
}

}  // namespace

Wrong try_inputs(Subject& subject) {
    return first_misstep(subject, wrote_to_inputs);
}

Wrong try_bounds(Subject& subject) {
    return first_misstep(subject, left_its_rows);
}

Wrong try_allocation(Subject& subject) {
    return first_noted(subject, &sandbox::CallNotes::allocation);
}

Wrong try_apart(Subject& subject) {
    return first_noted(subject, &sandbox::CallNotes::asked);
}

}  // namespace flutebook::plugin_check
