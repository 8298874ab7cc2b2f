// The web under the slitter: which rolls a board can run on, and how many sheets lie side by side on one.
#pragma once

#include <vector>

#include "host/plant/plant.hpp"

namespace flutebook::geometry {

/// The roll widths, mm, rising, that every ply of a board is stocked in; none of a board that is bought as sheets.
[[nodiscard]] std::vector<double> common_roll_widths(const plant::Plant& plant, const plant::Board& board);

/// Who may make a board's sheets: the plant's corrugators, or the one supplier of a board that is bought.
[[nodiscard]] std::vector<const plant::Corrugator*> makers_of(const plant::Plant& plant, const plant::Board& board);

/// Sheets side by side, and what is left of the roll at its edges. No outs: not even one sheet fits.
struct WebLayout {
    double outs, trim_mm;
};

[[nodiscard]] WebLayout cut_web(const plant::Corrugator& corrugator, double roll_width_mm, double slit_mm);

}  // namespace flutebook::geometry
