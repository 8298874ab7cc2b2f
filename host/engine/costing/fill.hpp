// Writes what the host knows into the columns of a block: facts, and the values of settings. A setting that is stepped
// over a need, or keyed by a choice, is written just before the model that takes it is called: the need's number and
// the choice may come from another model.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "host/contract/settings.hpp"
#include "host/engine/costing/columns.hpp"
#include "host/engine/graph/graph.hpp"
#include "host/engine/row.hpp"

namespace flutebook::engine {

/// As the graph has it: another model's number may replace a setting, and that model may need what it replaces.
[[nodiscard]] contract::SettingTakers setting_takers(const Graph& graph);

/// Constant once made. Refers to nothing but the slots and settings it was made with, which must outlive it, at the
/// place where they were.
class Filler {
public:
    Filler(const Graph& graph, const contract::Settings& settings, const Slots& slots);

    /// Settings that no row changes, over the whole length of the columns; once for each Columns.
    void fill_constant(Columns& columns) const;

    /// Facts, and settings that the order, its plies and its steps decide.
    void fill(Columns& columns, std::span<const Row> rows) const;

    /// Settings that wait for numbers, for the model that is called next: all that feeds it has run.
    void fill_decided(Columns& columns, std::span<const Row> rows, std::size_t model) const;

    /// The value that a setting has in row `r` of a block in which every model has run, and where it was given.
    [[nodiscard]] const contract::ValueStep& value_in(const Columns& columns, const Row& row, std::size_t r,
                                                      std::size_t model, std::size_t setting, std::size_t index) const;

private:
    // A number that decides a setting's value, as the model of the setting takes it.
    struct Decider {
        Slot slot;
        fields::Conversion conversion;

        [[nodiscard]] double number(const Columns& columns, std::size_t index, std::size_t row) const;
    };
    struct SettingColumn {
        std::size_t model, setting;
        contract::VariesBy varies_by;
        std::size_t request_index;
        Slot slot;
        std::optional<Decider> need, choice;
    };

    [[nodiscard]] SettingColumn column_of(const Graph& graph, const contract::Settings& settings, const Slots& slots,
                                          std::size_t model, std::size_t setting) const;
    void add_decided(const Graph& graph, std::size_t before, std::size_t model, std::size_t setting);
    static const contract::ValueStep& step_at(const Columns& columns, const SettingColumn& column, const Row& row,
                                              std::size_t r, std::size_t index);
    static void fill_column(Columns& columns, std::span<const Row> rows, const SettingColumn& column);

    std::vector<std::vector<SettingColumn>> all_;  // by model, then by setting
    std::vector<double> constants_;                // as many as constant_
    std::vector<SettingColumn> constant_, varying_;
    std::vector<std::vector<SettingColumn>> decided_;  // by the model before which they are filled
    std::vector<Slot> fact_slots_;
};

}  // namespace flutebook::engine
