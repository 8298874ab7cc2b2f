// The drawn map of a blank: rows of text that a person lined up, turned into cells and the borders between them.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "host/box_styles/style.hpp"
#include "host/fields/map_reader.hpp"

namespace flutebook::box_styles {

inline constexpr std::size_t most_lines_in_map = 40;
inline constexpr std::size_t most_cells = 64;
/// Cut-outs of one cell, and of all cells of a blank: more would take many seconds to draw and to prove.
inline constexpr std::size_t most_cut_outs_of_cell = 200, most_cut_outs_of_blank = 400;

struct StyleMap {
    std::vector<StyleCell> cells;  // in the order of the map; none hangs on another yet
    std::vector<StyleBorder> borders;
};

/// Reads `map` as so many columns and rows of cells. Complains of all that is wrong with it, each at its row, column or
/// cell, and returns nothing then.
[[nodiscard]] std::optional<StyleMap> read_style_map(const fields::Field& map, std::size_t columns, std::size_t rows);

/// The map of a blank of one column and one row that draws none: the cell `sheet`.
[[nodiscard]] StyleMap sheet_map(const base::Place& place);

/// Whether `text` may name a cell.
[[nodiscard]] bool is_cell_name(std::string_view text);

/// The names of cells that a map's rows hold, whatever else is wrong with them.
[[nodiscard]] std::vector<std::string> words_of_map(const base::Node& map);

}  // namespace flutebook::box_styles
