// The sheet "Inputs": each number that others rest on, once, with the file and line where it was written.
#pragma once

#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <tuple>
#include <vector>

#include "host/explain/trail.hpp"
#include "host/workbooks/book_cells.hpp"

namespace flutebook::workbooks {

/// A number of the request or of the plant's rules, which no model takes.
struct OwnInput {
    std::string name, where;
    std::optional<double> value;  // nothing: `meaning` says where it stands instead
    std::string unit, kind, meaning, place;
};

class InputsSheet {
public:
    /// Its row, from 1.
    std::size_t add(const OwnInput& input);
    /// The row of a number that a model takes or gives; the same number has one.
    std::size_t row_of(const explain::TracedFigure& figure);

    /// The cell of a row's number: "Inputs!$C$2".
    [[nodiscard]] static std::string cell(std::size_t row);

    [[nodiscard]] render::BookSheet sheet() const;

private:
    using Key = std::tuple<std::string, std::string, std::string, double>;
    std::map<Key, std::size_t> rows_of_figures_;
    std::vector<BookRow> rows_;
};

}  // namespace flutebook::workbooks
