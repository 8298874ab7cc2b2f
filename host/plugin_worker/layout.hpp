// Where the columns of one model's blocks lie in shared memory, as the host alone decides it.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <vector>

#include <flutebook/plugin.h>

#include "host/contract/evaluator.hpp"
#include "host/contract/model.hpp"
#include "host/plugin_worker/block_header.hpp"

namespace flutebook::plugin_worker {

/// The axes of a model's names, list by list: all that its blocks' layout depends on.
class NameAxes {
public:
    explicit NameAxes(const contract::Model& model);

    [[nodiscard]] const std::vector<contract::Axis>& of(std::size_t list) const { return axes_[list]; }
    [[nodiscard]] std::size_t count() const { return count_; }

    /// Of shared memory, for such a block.
    [[nodiscard]] std::size_t bytes_for(const flutebook_block& block) const;

private:
    std::array<std::vector<contract::Axis>, lists> axes_;
    std::size_t count_ = 0;
    std::size_t by_order_ = 0, by_ply_ = 0, by_step_ = 0;
};

/// For blocks of one shape and pitch.
class BlockLayout {
public:
    BlockLayout(const NameAxes& names, const flutebook_block& block);

    [[nodiscard]] bool is_for(const flutebook_block& block) const;

    /// Tells the worker, in its slate, as the layout of this number.
    void tell(BlockHeader& slate, std::uint32_t number) const;

    /// Copies what the model reads into shared memory that starts here.
    void copy_in(std::byte* memory, const flutebook_block& block, contract::RowSpan rows) const;

    /// Copies what it wrote back, each number once.
    void copy_out(const std::byte* memory, const flutebook_block& block, contract::RowSpan rows) const;

private:
    std::uint32_t plies_, steps_;
    std::size_t pitch_;
    std::array<std::vector<ColumnExtent>, lists> columns_;
    std::uint32_t refused_ = 0;
};

}  // namespace flutebook::plugin_worker
