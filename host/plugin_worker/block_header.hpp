// What stands first in the memory that host and worker share, and how both find a block's columns in it.
//
// The host writes what it asks for, then moves `asked` on by one; the worker writes what it found, then sets `answered`
// to the same number. The worker goes by what it reads here. The host knows where everything lies by itself and reads
// nothing here that it would have to believe.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>

#include "host/plugin_worker/shared_counter.hpp"

namespace flutebook::plugin_worker {

/// The lists of a block, in the order of flutebook_block.
enum class List : std::size_t { needs, settings, provides, quantities, rates, losses };
inline constexpr std::size_t lists = 6;

/// The columns of one name: doubles from the start of the memory to the first, and how many there are.
struct ColumnExtent {
    std::uint32_t first, extent;
};

inline constexpr std::size_t longest_wrong = 400;

struct BlockHeader {
    SharedCounter asked, answered;
    // What stands from here to `rows`, and the table, is written anew for each block: a model may have spoilt it.
    std::uint32_t layout;  // another number whenever the rest of it has changed
    std::uint32_t plies, steps;
    std::uint32_t refused;  // doubles from the start to the first row's
    std::uint64_t pitch;
    std::array<std::uint32_t, lists> names;  // in each list
    std::uint32_t rows;
    std::array<char, longest_wrong> wrong;  // what the model did wrong, to the first NUL; empty where it answered
};

/// The table of columns, list by list, stands behind the slate.
[[nodiscard]] inline ColumnExtent* table(BlockHeader& slate) {
    return reinterpret_cast<ColumnExtent*>(&slate + 1);
}

/// `answered` when the worker has loaded the model and waits.
inline constexpr std::uint32_t ready = 1;

}  // namespace flutebook::plugin_worker
