// The columns that one thread works with, kept from one block to the next: to make them takes longer than to cost a
// row.
#pragma once

#include <map>

#include "host/engine/costing/blocks.hpp"

namespace flutebook::engine {

/// One thread's. What a block left in the columns is there until the next block of its shape runs.
class Workbench {
public:
    /// `blocks` must outlive the bench.
    explicit Workbench(const Blocks& blocks) : blocks_(&blocks) {}

    [[nodiscard]] const Blocks& blocks() const { return *blocks_; }

    /// Stay where they are until the bench goes.
    [[nodiscard]] Columns& columns(Shape shape) {
        const auto found = columns_.find(shape);
        return found != columns_.end() ? found->second : columns_.emplace(shape, blocks_->columns(shape)).first->second;
    }

private:
    const Blocks* blocks_;
    std::map<Shape, Columns> columns_;
};

}  // namespace flutebook::engine
