// What stands in the columns of one row of a block that has run.
#include "host/engine/costing/full_costing.hpp"

namespace flutebook::engine {

namespace {

// The indices of a line's axis that are listed at a step: that step itself; of a line by ply all plies, at the
// corrugator; of a line of the order the one it has, at dispatch.
struct ListedIndices {
    std::size_t first, past;
};

ListedIndices listed_at(contract::Axis axis, std::size_t step, Shape shape) {
    if (axis == contract::Axis::step) return {step, step + 1};
    if (axis == contract::Axis::ply) return {0, step == 0 ? shape.plies : 0};
    return {0, step + 1 == shape.steps ? std::size_t{1} : std::size_t{0}};
}

// What a line charges at one index of its axis, in one row.
LineAmount amount_at(const Blocks& blocks, const Columns& columns, std::size_t model, std::size_t line,
                     std::size_t index, std::size_t r) {
    const ModelSlots& slots = blocks.slots().models[model];
    const double quantity = columns.column(slots.quantities[line], index)[r];
    const double rate = columns.column(slots.rates[line], index)[r];
    return {model, line, 0, std::nullopt, quantity, rate, Money::of(quantity, rate).value_or(Money{})};
}

// All lines that charge something: by step, then by model, then as the model declares them.
std::vector<LineAmount> lines_in_order(const Blocks& blocks, const Columns& columns, std::size_t r) {
    std::vector<LineAmount> result;
    constexpr std::size_t usual_lines = 64;
    result.reserve(usual_lines);
    const Graph& graph = blocks.graph();
    for (std::size_t step = 0; step < columns.shape().steps; ++step)
        for (std::size_t m = 0; m < graph.models.size(); ++m)
            for (std::size_t l = 0; l < graph.models[m].lines.size(); ++l) {
                const contract::Axis axis = graph.models[m].lines[l].axis;
                const ListedIndices listed = listed_at(axis, step, columns.shape());
                for (std::size_t i = listed.first; i < listed.past; ++i) {
                    LineAmount amount = amount_at(blocks, columns, m, l, i, r);
                    if (amount.amount == Money{}) continue;
                    amount.step = step;
                    if (axis == contract::Axis::ply) amount.ply = i;
                    result.push_back(amount);
                }
            }
    return result;
}

std::vector<double> by_index(const Columns& columns, Slot slot, std::size_t r) {
    std::vector<double> values;
    values.reserve(columns.extent(slot));
    for (std::size_t i = 0; i < columns.extent(slot); ++i) values.push_back(columns.column(slot, i)[r]);
    return values;
}

}  // namespace

ClassCosts costs_by_class(const Graph& graph, const Costing& costing) {
    ClassCosts result{};
    for (const LineAmount& line : costing.lines)
        result.at(static_cast<std::size_t>(graph.models[line.model].lines[line.line].cost_class)) += line.amount;
    return result;
}

Costing costing_of(const Blocks& blocks, const Columns& columns, std::size_t r, Money cost) {
    const Slots& slots = blocks.slots();
    Costing result;
    result.lines = lines_in_order(blocks, columns, r);
    for (const Slot loss : slots.models[blocks.graph().shedder].losses)
        result.losses.push_back(by_index(columns, loss, r));
    result.fed = by_index(columns, slots.fed, r);
    result.good = by_index(columns, slots.good, r);
    result.issued_kg = by_index(columns, slots.issued, r);
    result.adhesive_kg = columns.column(slots.adhesive, 0)[r];
    result.web_length_m = columns.column(slots.web_length, 0)[r];
    result.web_area_m2 = columns.column(slots.web_area, 0)[r];
    result.allowances = {columns.column(slots.order_change, 0)[r], columns.column(slots.roll_loss, 0)[r],
                         by_index(columns, slots.run_waste, r), by_index(columns, slots.setup_sheets, r)};
    result.cost = cost;
    return result;
}

}  // namespace flutebook::engine
