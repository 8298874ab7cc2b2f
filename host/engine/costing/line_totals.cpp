#include "host/engine/costing/line_totals.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <bit>
#include <cstdint>
#include <string>
#include <vector>

#include "host/engine/costing/row_tests.hpp"
#include "host/engine/facts.hpp"

namespace flutebook::engine {
namespace {

// Whether all are zero, as they were before the model ran. By their bits, of which a compiler joins whole vectors at a
// time; -0 may pass for a charge, which adds nothing.
bool charges_nothing(const double* quantity, const double* rate, std::size_t rows) {
    if (quantity[0] != 0) return false;
    std::uint64_t bits = 0;
    for (std::size_t r = 0; r < rows; ++r)
        bits |= std::bit_cast<std::uint64_t>(quantity[r]) | std::bit_cast<std::uint64_t>(rate[r]);
    return bits == 0;
}

bool are_amounts(const double* quantity, const double* rate, std::size_t rows) {
    return holds_for_all(rows, [&](std::size_t r) { return Money::is_amount(quantity[r], rate[r]); });
}

bool is_income(const double* quantity, const double* rate, std::size_t rows) {
    return holds_for_all(rows, [&](std::size_t r) { return !(quantity[r] * rate[r] > 0); });
}

// The sum of a block's lines, row by row. A double holds every whole number up to 2^53, so a few lines are added as
// doubles, whole vectors at a time, before they go to the integers.
class RowTotals {
public:
    /// Whether all are amounts of money; else what has been added is of no use.
    [[nodiscard]] bool add(const double* quantity, const double* rate, std::size_t rows) {
        std::array<double, rows_at_a_time> beyond{};
        std::size_t row = 0;
        for (; row + rows_at_a_time <= rows; row += rows_at_a_time) {
            std::array<double, rows_at_a_time> whole;
            for (std::size_t i = 0; i < rows_at_a_time; ++i) {
                beyond[i] += Money::is_amount(quantity[row + i], rate[row + i]) ? 0.0 : 1.0;
                whole[i] = Money::whole_ten_thousandths(quantity[row + i], rate[row + i]);
            }
            for (std::size_t i = 0; i < rows_at_a_time; ++i) pending_[row + i] += whole[i];
        }
        for (; row < rows; ++row) {
            beyond[0] += Money::is_amount(quantity[row], rate[row]) ? 0.0 : 1.0;
            pending_[row] += Money::whole_ten_thousandths(quantity[row], rate[row]);
        }
        if (std::any_of(beyond.begin(), beyond.end(), [](double count) { return count != 0; })) return false;
        if (++lines_pending_ == most_pending) move_pending(rows);
        return true;
    }

    void write_to(std::span<Outcome> outcomes) {
        move_pending(outcomes.size());
        for (std::size_t r = 0; r < outcomes.size(); ++r) outcomes[r].cost = Money::of_ten_thousandths(totals_[r]);
    }

private:
    static constexpr int most_pending = 8;
    static_assert(most_pending * Money::limit * 10'000 < 0x1p53, "sums of pending lines are exact");

    void move_pending(std::size_t rows) {
        for (std::size_t r = 0; r < rows; ++r) totals_[r] += static_cast<std::int64_t>(pending_[r]);
        std::fill_n(pending_.begin(), rows, 0.0);
        lines_pending_ = 0;
    }

    std::array<double, block_rows> pending_{};
    std::array<std::int64_t, block_rows> totals_{};
    int lines_pending_ = 0;
};

std::size_t first_beyond(const double* quantity, const double* rate, std::size_t rows) {
    std::size_t row = 0;
    while (row < rows && Money::is_amount(quantity[row], rate[row])) ++row;
    return row;
}

std::string beyond_money(double value) {
    return value != value ? "no number" : fmt::format("{}", value);
}

// One column of a line: its quantities and rates of a block's rows.
struct LineColumn {
    std::size_t model, line, index;
    const double *quantity, *rate;
};

// "MODEL: line NAME of step 1"
std::string line_place(const contract::Model& model, const LineColumn& column) {
    const contract::Line& line = model.lines[column.line];
    // People count plies from 1.
    const std::size_t place = line.axis == contract::Axis::ply ? column.index + 1 : column.index;
    const std::string at =
        line.axis == contract::Axis::order ? "" : fmt::format(" of {} {}", contract::to_text(line.axis), place);
    return fmt::format("{}: line {}{}", model.where(), line.name, at);
}

Fault no_amount(const Graph& graph, const LineColumn& column, std::size_t rows) {
    const std::size_t row = first_beyond(column.quantity, column.rate, rows);
    return {row, fmt::format("{} is no amount: found {} x {}; keep it below 9e10",
                             line_place(graph.models[column.model], column), beyond_money(column.quantity[row]),
                             beyond_money(column.rate[row]))};
}

Fault no_income(const Graph& graph, const LineColumn& column, std::size_t rows) {
    std::size_t row = 0;
    while (row + 1 < rows && !(column.quantity[row] * column.rate[row] > 0)) ++row;
    return {row, fmt::format("{} adds to the cost, but recovery is income: found {} x {}; keep it at or below 0",
                             line_place(graph.models[column.model], column), column.quantity[row], column.rate[row])};
}

// Calls `add` with every column of a model's lines that charges something; it answers whether all are amounts of money.
template <typename Add>
std::optional<Fault> each_charge(const Columns& columns, const Slots& slots, const Graph& graph, std::size_t model,
                                 std::size_t rows, const Add& add) {
    const ModelSlots& own = slots.models[model];
    for (std::size_t l = 0; l < graph.models[model].lines.size(); ++l)
        for (std::size_t i = 0; i < columns.extent(own.quantities[l]); ++i) {
            const LineColumn column{model, l, i, columns.column(own.quantities[l], i), columns.column(own.rates[l], i)};
            if (charges_nothing(column.quantity, column.rate, rows)) continue;
            if (!add(column)) return no_amount(graph, column, rows);
            if (graph.models[model].lines[l].cost_class == contract::CostClass::recovery &&
                !is_income(column.quantity, column.rate, rows))
                return no_income(graph, column, rows);
        }
    return std::nullopt;
}

// By class, then by step, then by row, in ten-thousandths.
class CostTable {
public:
    CostTable(Shape shape, std::size_t rows)
        : shape_(shape), rows_(rows), amounts_((classes + 1) * shape.steps * rows) {}

    /// As RowTotals::add.
    [[nodiscard]] bool add(const contract::Line& line, const LineColumn& column) {
        if (!are_amounts(column.quantity, column.rate, rows_)) return false;
        const std::size_t step = line.axis == contract::Axis::step  ? column.index
                                 : line.axis == contract::Axis::ply ? 0
                                                                    : shape_.steps - 1;
        std::int64_t* own = at(static_cast<std::size_t>(line.cost_class), step);
        std::int64_t* all = at(classes, step);
        for (std::size_t r = 0; r < rows_; ++r) {
            const auto amount =
                static_cast<std::int64_t>(Money::whole_ten_thousandths(column.quantity[r], column.rate[r]));
            own[r] += amount;
            all[r] += amount;
        }
        return true;
    }

    void add_at_dispatch(std::size_t row, const ClassCosts& costs) {
        for (std::size_t c = 0; c < classes; ++c)
            for (const std::size_t which : {c, classes}) at(which, shape_.steps - 1)[row] += costs[c].ten_thousandths();
    }

    // `which` counts the classes, and behind them stands their sum.
    void write(std::size_t which, std::size_t step, double* column) {
        const std::int64_t* amounts = at(which, step);
        for (std::size_t r = 0; r < rows_; ++r) column[r] = Money::of_ten_thousandths(amounts[r]).to_double();
    }

    static constexpr std::size_t classes = cost_names.size() - 1;
    static_assert(classes == std::tuple_size_v<ClassCosts>);

private:
    std::int64_t* at(std::size_t which, std::size_t step) {
        return amounts_.data() + (which * shape_.steps + step) * rows_;
    }

    Shape shape_;
    std::size_t rows_;
    std::vector<std::int64_t> amounts_;
};

}  // namespace

std::optional<Fault> add_up(const Columns& columns, const Slots& slots, const Graph& graph,
                            std::span<Outcome> outcomes) {
    const std::size_t rows = outcomes.size();
    RowTotals totals;
    for (std::size_t m = 0; m < graph.models.size(); ++m) {
        if (m == graph.first_late) {
            totals.write_to(outcomes);
            for (Outcome& outcome : outcomes) outcome.before_late = outcome.cost;
        }
        if (auto fault = each_charge(columns, slots, graph, m, rows, [&](const LineColumn& column) {
                return totals.add(column.quantity, column.rate, rows);
            }))
            return fault;
    }
    totals.write_to(outcomes);
    if (graph.first_late == graph.models.size())
        for (Outcome& outcome : outcomes) outcome.before_late = outcome.cost;
    return std::nullopt;
}

std::optional<Fault> write_costs(Columns& columns, const Slots& slots, const Graph& graph, std::span<const Row> rows) {
    CostTable table(columns.shape(), rows.size());
    for (std::size_t m = 0; m < graph.first_late; ++m)
        if (auto fault = each_charge(columns, slots, graph, m, rows.size(), [&](const LineColumn& column) {
                return table.add(graph.models[m].lines[column.line], column);
            }))
            return fault;
    for (std::size_t r = 0; r < rows.size(); ++r) table.add_at_dispatch(r, rows[r].order->piece.others);
    for (std::size_t which = 0; which < slots.costs.size(); ++which)
        for (std::size_t step = 0; slots.costs[which] != Slots::none && step < columns.shape().steps; ++step)
            table.write(which, step, columns.column(slots.costs[which], step));
    return std::nullopt;
}

void silence_once_a_set(Columns& columns, const contract::Model& model, const ModelSlots& slots, std::size_t rows) {
    for (std::size_t l = 0; l < model.lines.size(); ++l) {
        const contract::Line& line = model.lines[l];
        if (line.behaviour == contract::Behaviour::per_unit || line.axis == contract::Axis::ply) continue;
        for (const Slot slot : {slots.quantities[l], slots.rates[l]})
            std::fill_n(columns.column(slot, columns.extent(slot) - 1), rows, 0.0);
    }
}

}  // namespace flutebook::engine
