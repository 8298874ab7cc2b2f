// The columns of a block: which there are is decided once at start (Slots), where they lie once per shape (Columns).
//
// A slot is one name's columns, one per axis index. Facts and settings are written before the models run, provides,
// quantities, rates and losses by the models. A number taken in another unit has a slot of its own.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include <flutebook/plugin.h>

#include "host/engine/graph/graph.hpp"

namespace flutebook::engine {

/// Rows that a block has room for: enough that handing a block to a model in a process of its own costs little beside
/// its work.
inline constexpr std::size_t block_rows = 256;

/// Rows of a full block where all models work in this process: few enough that all columns of a plant's models stay
/// near the processor.
inline constexpr std::size_t block_rows_here = 128;

/// Same number of plies and steps: such rows share a block.
struct Shape {
    std::size_t plies, steps;
    friend auto operator<=>(const Shape&, const Shape&) = default;

    [[nodiscard]] std::size_t extent(contract::Axis axis) const {
        return axis == contract::Axis::order ? 1 : axis == contract::Axis::ply ? plies : steps;
    }
};

using Slot = std::size_t;

/// A slot that holds another one's numbers in another unit, made just before `model` runs.
struct Converted {
    Slot from, to;
    fields::Conversion conversion;
};

/// Which slots each model reads and writes, in the order of its description.
struct ModelSlots {
    std::vector<Slot> needs, settings, provides, quantities, rates, losses;
    std::vector<Converted> conversions;
};

struct Slots {
    explicit Slots(const Graph& graph);

    std::vector<contract::Axis> axes;  // of every slot
    std::vector<Slot> of_facts;        // by fact; `none` where nothing takes it
    std::vector<std::vector<Slot>> of_settings;
    std::vector<ModelSlots> models;
    Slot fed, good, web_length, web_area, issued, adhesive;  // what the host takes, in its own units
    Slot run_waste, setup_sheets, order_change, roll_loss;
    std::vector<Converted> host_conversions;
    std::vector<Slot> costs;  // as cost_names has them; `none` where no model takes it
    Slot quantity, box_area, sheet_area, board_grammage, parting;  // facts that the balance needs

    static constexpr Slot none = static_cast<Slot>(-1);

private:
    Slot add(contract::Axis axis);
    Slot source_slot(const Source& source);
    Slot take(const Link& link, contract::Axis axis, std::vector<Converted>& conversions);
};

/// One thread's columns for blocks of one shape. Owns the memory; slots keep their place until the shape changes.
class Columns {
public:
    /// `rows` of them in a full block. `slots` must outlive this.
    Columns(const Slots& slots, Shape shape, std::size_t rows);
    Columns(const Columns&) = delete;  // pointers into its own memory
    Columns& operator=(const Columns&) = delete;
    Columns(Columns&&) = default;
    Columns& operator=(Columns&&) = default;

    [[nodiscard]] Shape shape() const { return shape_; }
    [[nodiscard]] std::size_t extent(Slot slot) const { return shape_.extent(slots_->axes[slot]); }
    /// Of a full block.
    [[nodiscard]] std::size_t most_rows() const { return refused_.empty() ? 0 : refused_.front().size(); }
    /// The column of one axis index: a double for each row of a full block, on 64 bytes.
    [[nodiscard]] double* column(Slot slot, std::size_t index) { return first_[slot] + index * pitch_; }
    [[nodiscard]] const double* column(Slot slot, std::size_t index) const { return first_[slot] + index * pitch_; }

    /// Puts into the columns of `model`'s results what they begin with.
    void begin_results(std::size_t model, std::size_t rows);

    /// The block that `model` is called with, as its columns stand; valid until the next call for the same model.
    [[nodiscard]] const flutebook_block& block(std::size_t model, std::size_t rows);
    [[nodiscard]] const std::uint32_t* refused(std::size_t model) const { return refused_[model].data(); }

private:
    // Columns that stand one behind the other.
    struct ColumnRange {
        double* first = nullptr;
        std::size_t count = 0;
    };
    struct Pointers {
        std::vector<const double*> needs, settings;
        std::vector<double*> provides, quantities, rates, losses;
        ColumnRange provided, charged_and_lost;
        flutebook_block block{};
    };

    void fill(const ColumnRange& range, std::size_t rows, double value) const;

    const Slots* slots_;
    Shape shape_;
    std::size_t pitch_;  // doubles from one column to the next
    std::vector<double> memory_;
    std::vector<double*> first_;  // by slot
    std::vector<Pointers> pointers_;
    std::vector<std::vector<std::uint32_t>> refused_;
};

}  // namespace flutebook::engine
