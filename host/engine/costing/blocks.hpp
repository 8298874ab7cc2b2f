// Blocks through the models: fills the columns, runs each model in graph order, checks what it wrote, adds up the
// lines and checks the balance of mass.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "host/contract/settings.hpp"
#include "host/engine/costing/columns.hpp"
#include "host/engine/costing/columns_pool.hpp"
#include "host/engine/costing/fill.hpp"
#include "host/engine/engine.hpp"
#include "host/engine/graph/graph.hpp"
#include "host/engine/row.hpp"

namespace flutebook::engine {

/// A setting by request at another value than its order gives it.
struct MovedSetting {
    std::size_t model, setting;
    double value;
};

/// By row of a block: at most one setting each.
using Moves = std::span<const std::optional<MovedSetting>>;

/// Constant once made; any thread may run blocks, each with Columns of its own.
class Blocks {
public:
    Blocks(Graph graph, contract::Settings settings);
    Blocks(const Blocks&) = delete;
    Blocks& operator=(const Blocks&) = delete;

    [[nodiscard]] const Graph& graph() const { return graph_; }
    [[nodiscard]] const contract::Settings& settings() const { return settings_; }
    [[nodiscard]] const Slots& slots() const { return slots_; }
    /// What each setting comes to in a block that has run, and where it was given.
    [[nodiscard]] const Filler& filler() const { return filler_; }

    /// Rows that a full block has, at most `block_rows`.
    [[nodiscard]] std::size_t rows_of_block() const;

    /// Columns for a shape, with what no row changes already in them. Numbers of earlier blocks may stand in the rest.
    [[nodiscard]] LentColumns columns(Shape shape) const;

    /// Columns with all numbers of one row, which no model refuses; whoever has them may write any. Throws ModelError
    /// where a model is at fault.
    [[nodiscard]] Columns columns_of(const Row& row) const;

    /// Costs at most `block_rows` rows of the columns' shape into `outcomes`, which are as many. All of a block are
    /// first pieces of their sets, or none is.
    [[nodiscard]] std::optional<Fault> cost(Columns& columns, std::span<const Row> rows,
                                            std::span<Outcome> outcomes) const;

    /// Fills facts and settings and runs all models over the rows, leaving all numbers in the columns. Sets a refused
    /// row's outcome; the columns are then of no use for that row.
    [[nodiscard]] std::optional<Fault> run(Columns& columns, std::span<const Row> rows,
                                           std::span<Outcome> outcomes) const;

    /// The same with settings that are moved; `moves` are as many as the rows.
    [[nodiscard]] std::optional<Fault> run_moved(Columns& columns, std::span<const Row> rows, Moves moves,
                                                 std::span<Outcome> outcomes) const;

    /// Costs one row with a measured run in the place of the model that lays it out. No balance is held.
    [[nodiscard]] std::optional<Fault> cost_given(Columns& columns, const Row& row, const MeasuredRun& run,
                                                  Outcome& outcome) const;

    /// Calls one model over the columns as they stand; its outputs start afresh.
    [[nodiscard]] std::optional<Fault> call(Columns& columns, std::size_t model, std::size_t rows) const;

private:
    // A need or replaced setting whose giver may leave the taker's range.
    struct Check {
        Slot slot;
        contract::Range range;
        std::string name, giver;
    };

    // What a block may have otherwise than its rows say.
    struct Otherwise {
        const MeasuredRun* measured = nullptr;
        Moves moves = {};
    };

    [[nodiscard]] Columns make_columns(Shape shape) const;
    [[nodiscard]] std::optional<Fault> run_models(Columns& columns, std::span<const Row> rows,
                                                  std::span<Outcome> outcomes, const Otherwise& otherwise) const;
    void write_moves(Columns& columns, Moves moves) const;
    [[nodiscard]] std::optional<Fault> note_refused(const Columns& columns, std::size_t model,
                                                    std::span<Outcome> outcomes) const;
    [[nodiscard]] std::optional<Fault> cost_without_refused(Columns& columns, std::span<const Row> rows,
                                                            std::span<Outcome> outcomes) const;
    [[nodiscard]] std::optional<Fault> evaluate(Columns& columns, std::size_t model, std::span<const Row> rows) const;
    [[nodiscard]] std::optional<Fault> check_takes(const Columns& columns, std::size_t model, std::size_t rows) const;
    [[nodiscard]] std::optional<Fault> check_gives(const Columns& columns, std::size_t model, std::size_t rows) const;
    [[nodiscard]] std::vector<Check> checks_of(std::size_t model) const;

    Graph graph_;
    contract::Settings settings_;
    Slots slots_;
    Filler filler_;  // refers to the three above
    std::vector<std::vector<Check>> checks_;
    mutable ColumnsPool pool_;
};

/// Applies unit conversions of a list of slots to the first `rows` rows.
void convert(Columns& columns, const std::vector<Converted>& conversions, std::size_t rows);

}  // namespace flutebook::engine
