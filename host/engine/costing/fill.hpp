// Writes what the host knows into the columns of a block: facts, and the values of settings.
#pragma once

#include <span>
#include <vector>

#include "host/contract/settings.hpp"
#include "host/engine/costing/columns.hpp"
#include "host/engine/graph/graph.hpp"
#include "host/engine/row.hpp"

namespace flutebook::engine {

/// Constant once made. Refers to nothing but the slots and settings it was made with, which must outlive it, at the
/// place where they were.
class Filler {
public:
    Filler(const Graph& graph, const contract::Settings& settings, const Slots& slots);

    /// Settings that no row changes, over the whole length of the columns; once for each Columns.
    void fill_constant(Columns& columns) const;

    /// Facts, and settings that vary by paper, flute, machine or request.
    void fill(Columns& columns, std::span<const Row> rows) const;

private:
    struct SettingColumn {
        const contract::SettingValues* values;
        contract::VariesBy varies_by;
        Slot slot;
    };

    std::vector<SettingColumn> constant_, varying_;
    std::vector<Slot> fact_slots_;
};

}  // namespace flutebook::engine
