// Evaluates rows with one setting changed in each, in as few blocks as possible.
#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <span>

#include "host/engine/costing/blocks.hpp"
#include "host/engine/row.hpp"

namespace flutebook::quoting {

struct MovedRow {
    engine::Row row;
    std::optional<engine::MovedSetting> move;
};

/// What row `i` of those that were given came to stands at `r` of the columns, until the call returns.
using ReadMoved = std::function<void(const engine::Columns& columns, std::size_t r, std::size_t i)>;

/// Evaluates the rows, of any shapes, and calls `read` for each that comes through all models; one that a model
/// refuses, or is at fault at, is passed over. The order of the calls is that of the rows within one shape.
void read_moved_rows(const engine::Blocks& blocks, std::span<const MovedRow> rows, const ReadMoved& read);

}  // namespace flutebook::quoting
