#include "host/quoting/strength.hpp"

#include <cmath>

namespace flutebook::quoting {

double mckee_compression(double ect, double perimeter, double caliper) {
    constexpr double mckee = 5.87;
    return mckee * ect * std::sqrt(perimeter * caliper);
}

bool has_estimate(const plant::Plant& plant, const orders::Request& request) {
    const box_styles::Style* style = plant.find_style(request.style);
    return style != nullptr && style->code.starts_with("02") && style->pieces.size() == 1 && style->is_folded() &&
           request.inside && request.inside->height_mm > 0;
}

// A kN/m times a mm is a N.
std::optional<answers::Strength> estimated_strength(const plant::Plant& plant, const orders::Request& request) {
    const plant::Board& board = plant.boards.at(request.board);
    if (!board.ect_kn_m || !has_estimate(plant, request)) return std::nullopt;
    answers::Strength result;
    result.ect_kn_m = *board.ect_kn_m;
    if (board.ect_place) result.at = base::place_text(*board.ect_place);
    result.caliper_mm = plant::caliper_mm(plant, board);
    result.perimeter_mm = 2 * (request.inside->length_mm + request.inside->width_mm);
    result.height_mm = request.inside->height_mm;
    result.newtons = mckee_compression(result.ect_kn_m, result.perimeter_mm, result.caliper_mm);
    return result;
}

}  // namespace flutebook::quoting
