// Tests over all rows of a column, several rows at a time.
#pragma once

#include <array>
#include <cstddef>

namespace flutebook::engine {

/// Rows that loops over columns take together: enough for the widest vectors, and for sums beside each other, as one
/// sum must be added in its order.
inline constexpr std::size_t rows_at_a_time = 8;

/// Whether `test(r)` holds for every row below `rows`. It is called for all of them, also after one has failed: so the
/// compiler compares whole vectors at a time. It must have no effect.
template <typename Test>
[[nodiscard]] bool holds_for_all(std::size_t rows, const Test& test) {
    // Failures are counted in the type of the columns.
    std::array<double, rows_at_a_time> failed{};
    std::size_t row = 0;
    for (; row + rows_at_a_time <= rows; row += rows_at_a_time)
        for (std::size_t c = 0; c < rows_at_a_time; ++c) failed[c] += test(row + c) ? 0.0 : 1.0;
    for (; row < rows; ++row) failed[0] += test(row) ? 0.0 : 1.0;
    double all = 0;
    for (const double count : failed) all += count;
    return all == 0;
}

}  // namespace flutebook::engine
