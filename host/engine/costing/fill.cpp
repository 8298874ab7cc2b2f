#include "host/engine/costing/fill.hpp"

#include <algorithm>
#include <cmath>

#include "host/engine/facts.hpp"
#include "host/plant/machine_list.hpp"

namespace flutebook::engine {
namespace {

using contract::SettingTable;
using contract::SteppedValue;
using contract::VariesBy;

// A scenario may add machines to the plant whose settings were read: those are found by their codes. Who delivers a
// board is none of them.
const SteppedValue& of_machine(const SettingTable& table, const Row& row, std::size_t step) {
    const plant::Plant& plant = *row.order->plant;
    const std::size_t machine = machine_index(row, step);
    if (machine >= plant::machine_count(plant)) return table.otherwise;
    if (plant::machine_count(plant) == table.cells.size()) return table.cells[machine];
    return table.of(plant::machine_code(plant, machine));
}

const SteppedValue& of_flute(const SettingTable& table, const Row& row, std::size_t ply) {
    const plant::Flute* flute = row.order->layout->board.plies[ply].flute;
    if (flute == nullptr) return table.otherwise;
    return table.cells[static_cast<std::size_t>(flute - row.order->plant->flutes.data())];
}

// The slot whose numbers a slot of a model has in that model's unit, whether or not they are converted yet.
struct TakenSlot {
    Slot from;
    fields::Conversion conversion;
};

TakenSlot taken_by(const ModelSlots& model, Slot slot) {
    const auto converted = std::find_if(model.conversions.begin(), model.conversions.end(),
                                        [&](const Converted& conversion) { return conversion.to == slot; });
    return converted == model.conversions.end() ? TakenSlot{slot, {}}
                                                : TakenSlot{converted->from, converted->conversion};
}

const SteppedValue& cell_at(const SettingTable& table, VariesBy varies_by, const Row& row, std::size_t index) {
    if (varies_by == VariesBy::machine) return of_machine(table, row, index);
    if (varies_by == VariesBy::paper) return table.cells[row.order->layout->board.plies[index].paper];
    return of_flute(table, row, index);
}

// What sums of doubles lose makes no choice another one.
constexpr double whole_tolerance = 1e-9;

}  // namespace

double Filler::Decider::number(const Columns& columns, std::size_t index, std::size_t row) const {
    return conversion(columns.column(slot, columns.extent(slot) == 1 ? 0 : index)[row]);
}

contract::SettingTakers setting_takers(const Graph& graph) {
    using contract::SettingTaker;
    contract::SettingTakers result;
    for (std::size_t m = 0; m < graph.models.size(); ++m) {
        auto& takers = result.emplace_back();
        for (const auto& link : graph.settings[m]) takers.push_back(link ? SettingTaker::nobody : SettingTaker::model);
    }
    for (const auto& needs : graph.needs)
        for (const Link& need : needs)
            if (need.source.kind == Source::Kind::setting &&
                result[need.source.model][need.source.index] == SettingTaker::nobody)
                result[need.source.model][need.source.index] = SettingTaker::replacer;
    return result;
}

Filler::Filler(const Graph& graph, const contract::Settings& settings, const Slots& slots)
    : decided_(graph.models.size()), fact_slots_(slots.of_facts) {
    for (std::size_t m = 0; m < graph.models.size(); ++m) {
        auto& columns = all_.emplace_back();
        for (std::size_t s = 0; s < settings[m].size(); ++s) columns.push_back(column_of(graph, settings, slots, m, s));
    }
    const contract::SettingTakers takers = setting_takers(graph);
    for (std::size_t m = 0; m < graph.models.size(); ++m) {
        for (std::size_t s = 0; s < settings[m].size(); ++s) {
            if (takers[m][s] == contract::SettingTaker::nobody) continue;
            const SettingColumn& column = all_[m][s];
            if (const auto constant = settings[m][s].constant()) {
                constant_.push_back(column);
                constants_.push_back(*constant);
            } else if (column.need || column.choice) {
                add_decided(graph, m, m, s);
            } else {
                varying_.push_back(column);
            }
        }
        for (const Link& need : graph.needs[m])
            if (need.source.kind == Source::Kind::setting) add_decided(graph, m, need.source.model, need.source.index);
    }
}

Filler::SettingColumn Filler::column_of(const Graph& graph, const contract::Settings& settings, const Slots& slots,
                                        std::size_t model, std::size_t setting) const {
    const contract::Setting& declared = graph.models[model].settings[setting];
    SettingColumn result{model,
                         setting,
                         declared.varies_by,
                         settings[model][setting].request_index,
                         slots.of_settings[model][setting],
                         std::nullopt,
                         std::nullopt};
    const auto decider = [&](Slot slot) {
        const TakenSlot taken = taken_by(slots.models[model], slot);
        return Decider{taken.from, taken.conversion};
    };
    if (declared.stepped_over) result.need = decider(slots.models[model].needs[*declared.stepped_over]);
    if (declared.keyed_by) result.choice = decider(slots.models[model].settings[*declared.keyed_by]);
    return result;
}

// A choice that waits for numbers itself is filled before what it decides.
void Filler::add_decided(const Graph& graph, std::size_t before, std::size_t model, std::size_t setting) {
    const SettingColumn& column = all_[model][setting];
    if (!column.need && !column.choice) return;
    const auto& choice = graph.models[model].settings[setting].keyed_by;
    if (choice && !graph.settings[model][*choice]) add_decided(graph, before, model, *choice);
    decided_[before].push_back(column);
}

void Filler::fill_constant(Columns& columns) const {
    for (std::size_t c = 0; c < constant_.size(); ++c)
        for (std::size_t i = 0; i < columns.extent(constant_[c].slot); ++i)
            std::fill_n(columns.column(constant_[c].slot, i), columns.most_rows(), constants_[c]);
}

void Filler::fill(Columns& columns, std::span<const Row> rows) const {
    for (std::size_t f = 0; f < fact_slots_.size(); ++f) {
        if (fact_slots_[f] == Slots::none || facts()[f].fill == nullptr) continue;
        for (std::size_t i = 0; i < columns.extent(fact_slots_[f]); ++i)
            facts()[f].fill(rows, i, columns.column(fact_slots_[f], i));
    }
    for (const SettingColumn& column : varying_) fill_column(columns, rows, column);
}

void Filler::fill_decided(Columns& columns, std::span<const Row> rows, std::size_t model) const {
    for (const SettingColumn& column : decided_[model]) fill_column(columns, rows, column);
}

const contract::ValueStep& Filler::step_at(const Columns& columns, const SettingColumn& column, const Row& row,
                                           std::size_t r, std::size_t index) {
    const double number = column.need ? column.need->number(columns, index, r) : 0;
    const contract::OrderSettings& settings = row.order->settings;
    if (column.varies_by == VariesBy::request) return settings.requested[column.request_index].at(number);
    const contract::OrderSetting& chosen = settings.chosen[column.model][column.setting];
    if (chosen.value != nullptr) return chosen.value->at(number);
    if (column.choice) {
        const double choice = std::floor(column.choice->number(columns, index, r) + whole_tolerance);
        return chosen.table->cells[static_cast<std::size_t>(choice)].at(number);
    }
    return cell_at(*chosen.table, column.varies_by, row, index).at(number);
}

void Filler::fill_column(Columns& columns, std::span<const Row> rows, const SettingColumn& column) {
    const bool by_place = column.varies_by == VariesBy::paper || column.varies_by == VariesBy::flute ||
                          column.varies_by == VariesBy::machine;
    const bool by_order = !by_place && !column.need && !column.choice;
    for (std::size_t i = 0; i < columns.extent(column.slot); ++i) {
        double* values = columns.column(column.slot, i);
        for (std::size_t r = 0; r < rows.size(); ++r)
            values[r] = by_order && r > 0 && rows[r].order == rows[r - 1].order
                            ? values[r - 1]
                            : step_at(columns, column, rows[r], r, i).value;
    }
}

const contract::ValueStep& Filler::value_in(const Columns& columns, const Row& row, std::size_t r, std::size_t model,
                                            std::size_t setting, std::size_t index) const {
    return step_at(columns, all_[model][setting], row, r, index);
}

}  // namespace flutebook::engine
