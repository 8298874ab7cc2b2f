#include "host/geometry/web.hpp"

#include <algorithm>
#include <cmath>
#include <flutebook/run.hpp>

#include "host/geometry/sheet.hpp"

namespace flutebook::geometry {

using plant::Board;
using plant::Corrugator;
using plant::Paper;
using plant::Plant;

namespace {

bool is_same_width(double a_mm, double b_mm) {
    return std::abs(a_mm - b_mm) <= same_length_mm;
}

bool is_stocked(const Paper& paper, double width_mm) {
    return std::any_of(paper.roll_widths_mm.begin(), paper.roll_widths_mm.end(),
                       [&](double stocked) { return is_same_width(stocked, width_mm); });
}

}  // namespace

std::vector<double> common_roll_widths(const Plant& plant, const Board& board) {
    std::vector<double> widths = plant.paper(board.plies.front().paper).roll_widths_mm;
    const auto lacks = [&](double width) {
        return !std::all_of(board.plies.begin(), board.plies.end(),
                            [&](const Board::Ply& ply) { return is_stocked(plant.paper(ply.paper), width); });
    };
    widths.erase(std::remove_if(widths.begin(), widths.end(), lacks), widths.end());
    widths.erase(std::unique(widths.begin(), widths.end(), is_same_width), widths.end());
    return widths;
}

std::vector<const Corrugator*> makers_of(const Plant& plant, const Board& board) {
    if (const Corrugator* supplier = plant.supplier_of(board)) return {supplier};
    std::vector<const Corrugator*> makers;
    for (const Corrugator& corrugator : plant.corrugators) makers.push_back(&corrugator);
    return makers;
}

WebLayout cut_web(const Corrugator& corrugator, double roll_width_mm, double slit_mm) {
    const double fit = run::whole_down((roll_width_mm - corrugator.trim_min_mm) / slit_mm);
    const double outs = std::clamp(fit, 0.0, corrugator.outs_max);
    // The hair in whole_down may seat a sheet a rounding beyond the roll; the edge it leaves is nothing, not less.
    return {outs, std::max(0.0, roll_width_mm - outs * slit_mm)};
}

}  // namespace flutebook::geometry
