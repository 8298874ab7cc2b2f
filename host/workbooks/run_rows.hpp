// The rows of the sheet "Run": one for each number of a run that any of its columns has, in the order in which people
// read a run, so that a formula knows where the numbers stand that it is made of.
#pragma once

#include <compare>
#include <cstddef>
#include <map>
#include <string>
#include <vector>

#include "host/workbooks/book_cells.hpp"
#include "host/workbooks/traced_request.hpp"

namespace flutebook::workbooks {

/// Which number: of the order 0, else its ply or step, from 0.
struct RunKey {
    std::string name;
    std::size_t index = 0;
    friend auto operator<=>(const RunKey&, const RunKey&) = default;
};

/// How a quantity is made, as far as it decides which numbers its run has.
struct RunShape {
    std::size_t last_converter;  // 0 where there is none
    std::size_t parting;         // the step where boxes part from the sheet
    std::size_t plies;
};

/// The causes of loss that this arithmetic knows at a step.
[[nodiscard]] std::vector<std::string> known_causes(const RunShape& shape, std::size_t step);

class RunRows {
public:
    /// Of all columns together.
    explicit RunRows(const std::vector<std::pair<RunShape, const answers::Quote*>>& columns);

    /// Of a key that a column of these has: its row, from 1.
    [[nodiscard]] std::size_t row_of(const RunKey& key) const { return rows_of_keys_.at(key); }

    /// The first and the last row of losses.
    [[nodiscard]] std::size_t first_loss() const { return first_loss_; }
    [[nodiscard]] std::size_t last_loss() const { return last_loss_; }

    /// What stands left of the columns, row by row, under the head.
    [[nodiscard]] std::vector<BookRow> labels() const { return labels_; }

private:
    void add(const RunKey& key, const std::string& where, const std::string& unit);
    void add_given(const RunShape& widest);
    void add_pieces(const RunShape& widest);
    void add_web(const RunShape& widest);
    void add_losses(const std::vector<std::pair<RunShape, const answers::Quote*>>& columns, const RunShape& widest);

    std::map<RunKey, std::size_t> rows_of_keys_;
    std::vector<BookRow> labels_;
    std::size_t first_loss_ = 0, last_loss_ = 0;
};

}  // namespace flutebook::workbooks
