#include "host/engine/costing/fill.hpp"

#include <algorithm>

#include "host/engine/facts.hpp"

namespace flutebook::engine {
namespace {

// A table with one value throughout, as most tables without entries have, is treated as a constant.
bool is_constant(const contract::SettingValues& given, contract::VariesBy varies_by) {
    if (varies_by == contract::VariesBy::request || given.values.empty()) return false;
    const double first = given.values.front();
    return std::all_of(given.values.begin(), given.values.end(), [&](double value) { return value == first; }) &&
           (varies_by != contract::VariesBy::flute || given.of_liner == first);
}

double value_in(const contract::SettingValues& given, contract::VariesBy varies_by, const Row& row, std::size_t index) {
    switch (varies_by) {
        case contract::VariesBy::plant:
            return given.values.front();
        case contract::VariesBy::request:
            return row.order->request_settings[given.request_index];
        case contract::VariesBy::machine:
            return given.values[machine_index(row, index)];
        case contract::VariesBy::paper:
            return given.values[row.order->layout->board.plies[index].paper];
        case contract::VariesBy::flute:
            break;
    }
    const plant::Flute* flute = row.order->layout->board.plies[index].flute;
    if (flute == nullptr) return given.of_liner;
    return given.values[static_cast<std::size_t>(flute - row.order->plant->flutes.data())];
}

}  // namespace

Filler::Filler(const Graph& graph, const contract::Settings& settings, const Slots& slots)
    : fact_slots_(slots.of_facts) {
    for (std::size_t m = 0; m < graph.models.size(); ++m)
        for (std::size_t s = 0; s < settings[m].size(); ++s) {
            const SettingColumn column{&settings[m][s], graph.models[m].settings[s].varies_by, slots.of_settings[m][s]};
            (is_constant(*column.values, column.varies_by) ? constant_ : varying_).push_back(column);
        }
}

void Filler::fill_constant(Columns& columns) const {
    for (const SettingColumn& setting_column : constant_)
        for (std::size_t i = 0; i < columns.extent(setting_column.slot); ++i)
            std::fill_n(columns.column(setting_column.slot, i), block_rows, setting_column.values->values.front());
}

void Filler::fill(Columns& columns, std::span<const Row> rows) const {
    for (std::size_t f = 0; f < fact_slots_.size(); ++f) {
        if (fact_slots_[f] == Slots::none) continue;
        for (std::size_t i = 0; i < columns.extent(fact_slots_[f]); ++i)
            facts()[f].fill(rows, i, columns.column(fact_slots_[f], i));
    }
    for (const SettingColumn& setting_column : varying_)
        for (std::size_t i = 0; i < columns.extent(setting_column.slot); ++i) {
            double* column = columns.column(setting_column.slot, i);
            for (std::size_t r = 0; r < rows.size(); ++r)
                column[r] = value_in(*setting_column.values, setting_column.varies_by, rows[r], i);
        }
}

}  // namespace flutebook::engine
