#include "host/engine/costing/blocks.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdint>
#include <memory>

#include "host/base/errors.hpp"
#include "host/contract/call.hpp"
#include "host/contract/evaluator.hpp"
#include "host/contract/running_model.hpp"
#include "host/engine/costing/balance.hpp"
#include "host/engine/costing/line_totals.hpp"
#include "host/engine/costing/lost_block.hpp"
#include "host/engine/costing/measured_run.hpp"
#include "host/engine/costing/row_tests.hpp"
#include "host/engine/facts.hpp"

namespace flutebook::engine {
namespace {

// Whether any row is outside the range, or no number.
bool any_outside(const double* column, std::size_t rows, contract::Range range) {
    return !holds_for_all(rows, [&](std::size_t r) { return (column[r] >= range.low) & (column[r] <= range.high); });
}

std::size_t first_outside(const double* column, std::size_t rows, contract::Range range) {
    return static_cast<std::size_t>(
        std::find_if(column, column + rows, [&](double value) { return !range.holds(value); }) - column);
}

std::string at_index(contract::Axis axis, std::size_t index) {
    if (axis == contract::Axis::order) return "";
    // People count plies from 1, steps from the corrugator, which is 0.
    return fmt::format(" of {} {}", contract::to_text(axis), axis == contract::Axis::ply ? index + 1 : index);
}

std::string found(double value) {
    return value != value ? "no number" : fmt::format("{}", value);
}

// From here on every rate is money per unit, whatever unit the model computes it in.
void scale_rates(Columns& columns, const contract::Model& model, const ModelSlots& slots, std::size_t rows) {
    for (std::size_t l = 0; l < model.lines.size(); ++l) {
        const double scale = model.lines[l].rate_scale;
        if (scale == 1) continue;
        for (std::size_t i = 0; i < columns.extent(slots.rates[l]); ++i) {
            double* rate = columns.column(slots.rates[l], i);
            for (std::size_t r = 0; r < rows; ++r) rate[r] *= scale;
        }
    }
}

// A wrong amount comes of the order as much as of the model: the message begins with the request's file.
std::optional<Fault> with_order(std::optional<Fault> fault, std::span<const Row> rows) {
    if (!fault) return fault;
    const Order& order = *rows[fault->row].order;
    fault->text = fmt::format("{}: request {} at {:.0f}: {}", order.request->place.file.text(), order.request->number,
                              order.quantity, fault->text);
    return fault;
}

// The one place where a model works, be it here or elsewhere.
std::optional<contract::Failure> evaluate_block(Columns& columns, const Graph& graph, std::size_t model,
                                                std::size_t rows) {
    const contract::Model& evaluated = graph.models[model];
    if (evaluated.works_elsewhere()) return evaluated.elsewhere->evaluate(columns.block(model, rows), {0, rows});
    columns.begin_results(model, rows);
    const contract::RunningModel running(evaluated.file.c_str(), evaluated.id.c_str(), "it evaluated");
    if (auto wrong = contract::call(evaluated.evaluate, columns.block(model, rows)))
        return contract::Failure{contract::Failure::Kind::answered, std::move(*wrong)};
    return std::nullopt;
}

bool any_refused(const std::uint32_t* refused, std::size_t rows) {
    return std::any_of(refused, refused + rows, [](std::uint32_t reason) { return reason != 0; });
}

bool is_refused(const Outcome& outcome) {
    return outcome.state == Outcome::State::refused;
}

Fault fault_of(const contract::Model& model, const contract::Failure& failure) {
    return {0, model.where() + ": " + failure.text};
}

}  // namespace

void convert(Columns& columns, const std::vector<Converted>& conversions, std::size_t rows) {
    for (const Converted& converted : conversions)
        for (std::size_t i = 0; i < columns.extent(converted.to); ++i) {
            const double* from = columns.column(converted.from, i);
            double* to = columns.column(converted.to, i);
            for (std::size_t r = 0; r < rows; ++r) to[r] = converted.conversion(from[r]);
        }
}

Blocks::Blocks(Graph graph, contract::Settings settings)
    : graph_(std::move(graph)), settings_(std::move(settings)), slots_(graph_), filler_(graph_, settings_, slots_) {
    for (std::size_t m = 0; m < graph_.models.size(); ++m) checks_.push_back(checks_of(m));
}

std::vector<Blocks::Check> Blocks::checks_of(std::size_t model) const {
    std::vector<Check> result;
    const auto check = [&](const Link& link, Slot slot, contract::Range takes, const std::string& name) {
        const Source& source = link.source;
        // A setting was held against its own range when it was read.
        const bool is_fact = source.kind == Source::Kind::fact;
        const bool is_setting = source.kind == Source::Kind::setting;
        const contract::Range gives = is_fact      ? facts()[source.index].name.range
                                      : is_setting ? graph_.models[source.model].settings[source.index].range
                                                   : graph_.models[source.model].provides[source.index].range;
        const contract::Range given{link.conversion(gives.low), link.conversion(gives.high)};
        if (takes.holds(given)) return;
        result.push_back({slot, takes, name, is_fact ? "the host" : graph_.models[source.model].where()});
    };
    const contract::Model& taker = graph_.models[model];
    for (std::size_t n = 0; n < taker.needs.size(); ++n)
        check(graph_.needs[model][n], slots_.models[model].needs[n], taker.needs[n].range, taker.needs[n].name);
    for (std::size_t s = 0; s < taker.settings.size(); ++s)
        if (const auto& replaced = graph_.settings[model][s])
            check(*replaced, slots_.models[model].settings[s], taker.settings[s].range,
                  taker.id + "." + taker.settings[s].name);
    return result;
}

std::size_t Blocks::rows_of_block() const {
    const bool all_work_here = std::none_of(graph_.models.begin(), graph_.models.end(),
                                            [](const contract::Model& model) { return model.works_elsewhere(); });
    return all_work_here ? block_rows_here : block_rows;
}

LentColumns Blocks::columns(Shape shape) const {
    std::unique_ptr<Columns> waiting = pool_.take(shape);
    return {pool_, waiting != nullptr ? std::move(waiting) : std::make_unique<Columns>(make_columns(shape))};
}

Columns Blocks::make_columns(Shape shape) const {
    Columns result(slots_, shape, rows_of_block());
    filler_.fill_constant(result);
    return result;
}

Columns Blocks::columns_of(const Row& row) const {
    Columns result = make_columns({row.plies(), row.steps()});
    Outcome outcome;
    if (auto fault = run(result, {&row, 1}, {&outcome, 1})) throw ModelError(fault->text);
    return result;
}

std::optional<Fault> Blocks::run(Columns& columns, std::span<const Row> rows, std::span<Outcome> outcomes) const {
    return run_models(columns, rows, outcomes, {});
}

std::optional<Fault> Blocks::run_moved(Columns& columns, std::span<const Row> rows, Moves moves,
                                       std::span<Outcome> outcomes) const {
    return run_models(columns, rows, outcomes, {nullptr, moves});
}

void Blocks::write_moves(Columns& columns, Moves moves) const {
    for (std::size_t r = 0; r < moves.size(); ++r)
        if (moves[r]) columns.column(slots_.of_settings[moves[r]->model][moves[r]->setting], 0)[r] = moves[r]->value;
}

std::optional<Fault> Blocks::cost_given(Columns& columns, const Row& row, const MeasuredRun& run,
                                        Outcome& outcome) const {
    outcome = {};
    if (auto fault = run_models(columns, {&row, 1}, {&outcome, 1}, {&run, {}})) return fault;
    if (is_refused(outcome)) return std::nullopt;
    return with_order(add_up(columns, slots_, graph_, {&outcome, 1}), {&row, 1});
}

std::optional<Fault> Blocks::run_models(Columns& columns, std::span<const Row> rows, std::span<Outcome> outcomes,
                                        const Otherwise& otherwise) const {
    filler_.fill(columns, rows);
    write_moves(columns, otherwise.moves);
    const bool are_first = rows.front().order->piece.is_first();
    for (std::size_t m = 0; m < graph_.models.size(); ++m) {
        if (m >= graph_.first_late && !are_first) {
            columns.begin_results(m, rows.size());
            continue;
        }
        if (m == graph_.first_late)
            if (auto fault = write_costs(columns, slots_, graph_, rows)) return with_order(std::move(fault), rows);
        convert(columns, slots_.models[m].conversions, rows.size());
        if (auto fault = check_takes(columns, m, rows.size())) return fault;
        filler_.fill_decided(columns, rows, m);
        write_moves(columns, otherwise.moves);  // one may be decided here
        const bool is_measured = otherwise.measured != nullptr && m == graph_.shedder;
        auto fault =
            is_measured ? write_measured_run(columns, slots_, graph_, *otherwise.measured) : evaluate(columns, m, rows);
        if (fault) return fault;
        // A refused row may lack numbers, so no later model may read it.
        if (any_refused(columns.refused(m), rows.size())) return note_refused(columns, m, outcomes);
        if ((fault = check_gives(columns, m, rows.size()))) return fault;
        if (!are_first) silence_once_a_set(columns, graph_.models[m], slots_.models[m], rows.size());
    }
    convert(columns, slots_.host_conversions, rows.size());
    return std::nullopt;
}

std::optional<Fault> Blocks::note_refused(const Columns& columns, std::size_t model,
                                          std::span<Outcome> outcomes) const {
    const std::uint32_t* refused = columns.refused(model);
    for (std::size_t r = 0; r < outcomes.size(); ++r) {
        if (refused[r] == 0) continue;
        if (refused[r] > graph_.models[model].reasons.size())
            return Fault{r,
                         fmt::format("{}: refused a row for a reason it does not declare: found {}; declare the reason",
                                     graph_.models[model].where(), refused[r])};
        outcomes[r] = {Outcome::State::refused, model, refused[r] - 1, {}, {}};
    }
    return std::nullopt;
}

std::optional<Fault> Blocks::cost(Columns& columns, std::span<const Row> rows, std::span<Outcome> outcomes) const {
    std::fill(outcomes.begin(), outcomes.end(), Outcome{});
    if (auto fault = run(columns, rows, outcomes)) return fault;
    if (std::any_of(outcomes.begin(), outcomes.end(), is_refused)) return cost_without_refused(columns, rows, outcomes);
    if (auto fault = with_order(add_up(columns, slots_, graph_, outcomes), rows)) return fault;
    return check_balance(columns, slots_, graph_, rows.size());
}

// The rows that are left, in a block of their own: a model is pure, so they come to the same bits.
std::optional<Fault> Blocks::cost_without_refused(Columns& columns, std::span<const Row> rows,
                                                  std::span<Outcome> outcomes) const {
    std::vector<std::size_t> left;
    std::vector<Row> rows_left;
    for (std::size_t r = 0; r < rows.size(); ++r)
        if (!is_refused(outcomes[r])) {
            left.push_back(r);
            rows_left.push_back(rows[r]);
        }
    if (left.empty()) return std::nullopt;
    std::vector<Outcome> outcomes_left(left.size());
    auto fault = cost(columns, rows_left, outcomes_left);
    if (fault) return Fault{left[fault->row], std::move(fault->text)};
    for (std::size_t i = 0; i < left.size(); ++i) outcomes[left[i]] = outcomes_left[i];
    return std::nullopt;
}

std::optional<Fault> Blocks::evaluate(Columns& columns, std::size_t model, std::span<const Row> rows) const {
    const auto failure = evaluate_block(columns, graph_, model, rows.size());
    if (!failure) {
        scale_rates(columns, graph_.models[model], slots_.models[model], rows.size());
        return std::nullopt;
    }
    if (failure->kind == contract::Failure::Kind::lost)
        return lost_block(graph_.models[model], columns.block(model, rows.size()), rows, *failure);
    return fault_of(graph_.models[model], *failure);
}

std::optional<Fault> Blocks::call(Columns& columns, std::size_t model, std::size_t rows) const {
    if (const auto failure = evaluate_block(columns, graph_, model, rows))
        return fault_of(graph_.models[model], *failure);
    scale_rates(columns, graph_.models[model], slots_.models[model], rows);
    return std::nullopt;
}

std::optional<Fault> Blocks::check_takes(const Columns& columns, std::size_t model, std::size_t rows) const {
    for (const Check& check : checks_[model])
        for (std::size_t i = 0; i < columns.extent(check.slot); ++i) {
            const double* column = columns.column(check.slot, i);
            if (!any_outside(column, rows, check.range)) continue;
            const std::size_t row = first_outside(column, rows, check.range);
            return Fault{row,
                         fmt::format("{}: out of range: {}{} is {}, it takes {} to {}; the number comes from {}",
                                     graph_.models[model].where(), check.name, at_index(slots_.axes[check.slot], i),
                                     found(column[row]), check.range.low, check.range.high, check.giver)};
        }
    return std::nullopt;
}

std::optional<Fault> Blocks::check_gives(const Columns& columns, std::size_t model, std::size_t rows) const {
    const contract::Model& giver = graph_.models[model];
    for (std::size_t p = 0; p < giver.provides.size(); ++p) {
        const contract::Name& name = giver.provides[p];
        const Slot slot = slots_.models[model].provides[p];
        for (std::size_t i = 0; i < columns.extent(slot); ++i) {
            const double* column = columns.column(slot, i);
            if (!any_outside(column, rows, name.range)) continue;
            const std::size_t row = first_outside(column, rows, name.range);
            if (column[row] != column[row])
                return Fault{row, fmt::format("{}: left {}{} without a number; set it in every row", giver.where(),
                                              name.name, at_index(name.axis, i))};
            return Fault{
                row,
                fmt::format("{}: out of range: its {}{} is {}, it promised {} to {}; correct the model or its range",
                            giver.where(), name.name, at_index(name.axis, i), column[row], name.range.low,
                            name.range.high)};
        }
    }
    return std::nullopt;
}

}  // namespace flutebook::engine
