// Every way of one blank is costed at each quantity; the cheapest is worked out in full.
#include "host/quoting/piece_quote.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <tuple>
#include <utility>

#include "host/quoting/cost_sheet.hpp"
#include "host/quoting/figure_formulas.hpp"
#include "host/quoting/order_terms.hpp"
#include "host/quoting/provided.hpp"
#include "host/quoting/winner_figures.hpp"

namespace flutebook::quoting {

namespace {

constexpr std::size_t runners_up_shown = 3;

// All ways of one request at one quantity, costed.
struct Costed {
    const engine::Order* order;
    std::vector<engine::Outcome> outcomes;  // by candidate
};

answers::Unmakeable unmakeable(const engine::Engine& engine, const geometry::Layout& layout, const Costed& costed) {
    answers::Unmakeable result{costed.order->quantity, layout.refused};
    for (std::size_t i = 0; i < costed.outcomes.size(); ++i) {
        const contract::Model& model = engine.graph().models[costed.outcomes[i].model];
        result.refused.push_back({geometry::name_of(layout.candidates[i], costed.order->plant->units),
                                  fmt::format("{}: {}", model.id, model.reasons[costed.outcomes[i].reason])});
    }
    return result;
}

std::vector<answers::RunnerUp> runners_up(const geometry::Layout& layout, const Costed& costed,
                                          const std::vector<std::size_t>& ranked) {
    std::vector<answers::RunnerUp> result;
    const Money least = costed.outcomes[ranked.front()].cost;
    for (std::size_t i = 1; i < ranked.size() && i <= runners_up_shown; ++i) {
        const geometry::Candidate& way = layout.candidates[ranked[i]];
        answers::RunnerUp next;
        next.candidate = geometry::name_of(way, costed.order->plant->units);
        next.cost = costed.outcomes[ranked[i]].cost;
        next.dearer_by = next.cost - least;
        next.way.corrugator = way.corrugator->code;
        next.way.roll_width_mm = way.roll_width_mm;
        next.way.ups = way.ups;
        next.route = way.route_codes();
        result.push_back(std::move(next));
    }
    return result;
}

PieceQuantity answer(const engine::Engine& engine, const geometry::Layout& layout, const Costed& costed,
                     const answers::QuoteOptions& asked, const std::optional<ExplainedFigure>& explained) {
    const std::vector<std::size_t> ranked = ways_by_cost(costed.outcomes);
    if (ranked.empty()) return {{std::nullopt, unmakeable(engine, layout, costed)}};
    const engine::Row winner{costed.order, &layout.candidates[ranked.front()]};
    const engine::Costing costing = *engine.cost_in_full(winner);
    answers::Quote quote = cost_sheet(engine, winner, costing);
    quote.terms = terms_of(engine, winner, costing);
    const Winner alone{winner, &costing};
    WinnerFigures figures = std::move(winner_figures(engine, {&alone, 1}).front());
    quote.machine_hours = std::move(figures.machine_hours);
    quote.not_in_price = std::move(figures.not_in_price);
    quote.candidates = ranked.size();
    quote.runners_up = runners_up(layout, costed, ranked);
    if (asked.provided) quote.provided = provided_by(engine, winner, *asked.provided);
    if (asked.has_touched) quote.touched = explain::touched_numbers(engine, winner);
    if (explained && explained->is_wanted_at(quote.quantity))
        quote.trails = explain::explain(engine, winner, explained->name, formulas_of(quote));
    return {{std::move(quote), std::nullopt}, engine::costs_by_class(engine.graph(), costing)};
}

std::vector<Costed> cost_all(const engine::Engine& engine, const geometry::Layout& layout,
                             const std::vector<engine::Order>& orders, unsigned threads) {
    std::vector<engine::Row> rows;
    for (const engine::Order& order : orders)
        for (const geometry::Candidate& candidate : layout.candidates) rows.push_back({&order, &candidate});
    const std::vector<engine::Outcome> outcomes = engine.cost(rows, threads);
    std::vector<Costed> result;
    auto first = outcomes.begin();
    for (const engine::Order& order : orders) {
        const auto past = first + static_cast<std::ptrdiff_t>(layout.candidates.size());
        result.push_back({&order, {first, past}});
        first = past;
    }
    return result;
}

}  // namespace

// A least charge makes many equal. Candidates stand in the order that decides other ties.
std::vector<std::size_t> ways_by_cost(std::span<const engine::Outcome> outcomes) {
    std::vector<std::size_t> result;
    for (std::size_t i = 0; i < outcomes.size(); ++i)
        if (outcomes[i].state == engine::Outcome::State::costed) result.push_back(i);
    const std::size_t shown = std::min(result.size(), runners_up_shown + 1);
    std::partial_sort(result.begin(), result.begin() + static_cast<std::ptrdiff_t>(shown), result.end(),
                      [&](std::size_t left, std::size_t right) {
                          return std::tuple(outcomes[left].cost, outcomes[left].before_late, left) <
                                 std::tuple(outcomes[right].cost, outcomes[right].before_late, right);
                      });
    return result;
}

std::vector<PieceQuantity> quote_piece(const engine::Engine& engine, const geometry::Layout& layout,
                                       const std::vector<engine::Order>& orders, const answers::QuoteOptions& asked,
                                       const std::optional<ExplainedFigure>& explained) {
    std::vector<PieceQuantity> result;
    for (const Costed& costed : cost_all(engine, layout, orders, asked.threads))
        result.push_back(answer(engine, layout, costed, asked, explained));
    return result;
}

}  // namespace flutebook::quoting
