#include "host/plugin_check/fuzz_rule.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "host/plugin_check/rounds.hpp"
#include "host/plugin_check/subject.hpp"

namespace flutebook::plugin_check {
namespace {

using contract::Model;

constexpr std::size_t at_a_time = 100;  // orders; each group is reported to the parent

struct FuzzFault {
    std::size_t orders;  // that many, from the first on, bring it out
    std::string text;
};

// The fault that the fewest orders bring out.
void take_earlier(std::optional<FuzzFault>& first, std::size_t orders, Wrong wrong) {
    if (wrong && (!first || orders < first->orders)) first = FuzzFault{orders, std::move(*wrong)};
}

// A settings's values are part of what brings a fault out.
std::string with_settings(const Model& model, const TrialRow& row, const std::string& text) {
    std::string result;
    for (std::size_t s = 0; s < model.settings.size(); ++s)
        result += fmt::format("{} {} {}", result.empty() ? ", with" : ",", model.settings[s].name,
                              fmt::join(row.settings[s], " "));
    return text + result;
}

Wrong wrong_row(const Model& model, const TrialRow& row, const Written& written) {
    for (const auto judge : {wrong_number, wrong_range, wrong_balance})
        if (auto found = judge(model, row, written)) return with_settings(model, row, *found);
    return std::nullopt;
}

// Each row by itself, in full blocks.
void try_rows(const Model& model, const Group& group, std::optional<FuzzFault>& first) {
    Stage stage(model, group.front()->shape, usual_block, Ground::open);
    for (const Group& block : cut(group, usual_block)) {
        const bool answers = !wrong_answer(model, stage, block);
        for (std::size_t r = 0; r < block.size() && answers; ++r)
            take_earlier(first, block[r]->order, wrong_row(model, *block[r], stage.written(r)));
        for (std::size_t r = 0; r < block.size() && !answers; ++r)
            if (auto found = wrong_answer(model, stage, {block[r]}))
                take_earlier(first, block[r]->order, with_settings(model, *block[r], *found));
    }
}

// All rows again, in another order and in blocks of another size.
void try_again_otherwise(const Model& model, Group group, Draws& draws, std::size_t orders,
                         std::optional<FuzzFault>& first) {
    const std::vector<Written> expected = evaluate(model, group, usual_block);
    std::vector<std::size_t> places(group.size());
    for (std::size_t i = 0; i < places.size(); ++i) places[i] = i;
    for (std::size_t i = places.size(); i > 1; --i) std::swap(places[i - 1], places[draws.index(i)]);
    Group turned;
    for (const std::size_t place : places) turned.push_back(group[place]);
    const std::vector<Written> now = evaluate(model, turned, 1 + draws.index(usual_block));
    for (std::size_t i = 0; i < places.size(); ++i)
        take_earlier(first, orders, difference(model, *turned[i], expected[places[i]], now[i]));
}

}  // namespace

Wrong try_many_orders(Subject& subject) {
    const Model& model = subject.model();
    const std::size_t all = subject.effort().many_orders;
    TrialRows source(model, subject.effort().seed, Settings::anywhere);
    Draws draws(subject.effort().seed);
    std::size_t count = 0;
    for (std::size_t done = 0; done < all; done += at_a_time) {
        const std::size_t orders = std::min(all - done, at_a_time);
        subject.report().say("phase", fmt::format("made orders from {} on were tried", done + 1));
        const std::vector<TrialRow> rows = source.next(orders);
        count += rows.size();
        std::optional<FuzzFault> first;
        for (const Group& group : by_shape(rows)) try_rows(model, group, first);
        for (const Group& group : by_shape(rows))
            if (!first) try_again_otherwise(model, group, draws, done + orders, first);
        if (!first) continue;
        subject.report().say("orders", std::to_string(first->orders));
        return first->text;
    }
    subject.report().say_figure("many_rows", static_cast<double>(count));
    return std::nullopt;
}

}  // namespace flutebook::plugin_check
