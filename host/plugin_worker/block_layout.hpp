// Where the columns of a block lie in the memory that host and worker share.
//
// The memory begins with a BlockHeader. The host writes a block, then increases `asked` by one; the worker writes its
// results, then sets `answered` to the same number. The worker reads the layout from the header. The host computes the
// layout itself and never relies on what the header says.
#pragma once

#include <flutebook/plugin.h>

#include <array>
#include <cstddef>
#include <cstdint>
#include <vector>

#include "host/contract/evaluator.hpp"
#include "host/contract/model.hpp"
#include "host/plugin_worker/shared_counter.hpp"

namespace flutebook::plugin_worker {

/// The lists of a block, in the order of flutebook_block.
enum class BlockList : std::size_t { needs, settings, provides, quantities, rates, losses };
inline constexpr std::size_t lists = 6;

/// The columns of one name: the place of the first, in doubles from the start of the memory, and their number.
struct ColumnExtent {
    std::uint32_t first, extent;
};

inline constexpr std::size_t longest_error = 400;

struct BlockHeader {
    SharedCounter asked, answered;
    // The host writes the fields from here to `rows`, and the table, again for each block: a faulty model may have
    // overwritten them.
    std::uint32_t layout;  // its number, which changes when one of the next fields changes
    std::uint32_t plies, steps;
    std::uint32_t refused;  // the place of the first row's refusal, in doubles from the start
    std::uint64_t pitch;
    std::array<std::uint32_t, lists> names;  // in each list
    std::uint32_t rows;
    std::array<char, longest_error> error;  // the model's error, up to the first NUL; empty where it gave results
};

/// The table of columns, list by list, follows the header.
[[nodiscard]] inline ColumnExtent* table(BlockHeader& header) {
    return reinterpret_cast<ColumnExtent*>(&header + 1);
}

/// The value of `answered` when the worker has loaded the model and waits for a block.
inline constexpr std::uint32_t ready = 1;

/// The axes of a model's names, list by list. With the shape of a block they determine its layout.
class NameAxes {
public:
    explicit NameAxes(const contract::Model& model);

    [[nodiscard]] const std::vector<contract::Axis>& of(std::size_t list) const { return axes_[list]; }
    [[nodiscard]] std::size_t count() const { return count_; }

    /// The size of the shared memory for such a block.
    [[nodiscard]] std::size_t bytes_for(const flutebook_block& block) const;

private:
    std::array<std::vector<contract::Axis>, lists> axes_;
    std::size_t count_ = 0;
    std::size_t by_order_ = 0, by_ply_ = 0, by_step_ = 0;
};

/// The layout of blocks of one shape and pitch.
class BlockLayout {
public:
    BlockLayout(const NameAxes& names, const flutebook_block& block);

    [[nodiscard]] bool is_for(const flutebook_block& block) const;

    /// Writes the layout into the worker's header, under this number.
    void write_to(BlockHeader& header, std::uint32_t number) const;

    /// Copies what the model reads into the shared memory at `memory`.
    void copy_in(std::byte* memory, const flutebook_block& block, contract::RowSpan rows) const;

    /// Copies the results from the shared memory, reading each number once.
    void copy_out(const std::byte* memory, const flutebook_block& block, contract::RowSpan rows) const;

private:
    std::uint32_t plies_, steps_;
    std::size_t pitch_;
    std::array<std::vector<ColumnExtent>, lists> columns_;
    std::uint32_t refused_ = 0;
};

}  // namespace flutebook::plugin_worker
