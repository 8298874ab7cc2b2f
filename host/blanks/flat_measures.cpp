// Areas by the shoelace formula: exact for whole and half millimetres.
#include "host/blanks/flat_measures.hpp"

#include <algorithm>
#include <cmath>

#include "host/blanks/flat_borders.hpp"
#include "host/blanks/flat_cells.hpp"

namespace flutebook::blanks {

namespace {

double net_area(const FlatCell& cell) {
    double twice = std::abs(signed_double_area(cell.outline));
    for (const Polygon& hole : cell.holes) twice -= std::abs(signed_double_area(hole));
    return twice / 2;
}

double length_of_borders(const FlatCell& cell) {
    double length = length_around(cell.outline);
    for (const Polygon& hole : cell.holes) length += length_around(hole);
    return length;
}

double total_length(const std::vector<Segment>& segments) {
    double length = 0;
    for (const Segment& segment : segments) length += length_of(segment);
    return length;
}

// Rising, and those less than a hundredth of a mm apart once.
std::vector<double> distinct(std::vector<double> places) {
    std::sort(places.begin(), places.end());
    const auto is_same = [](double a, double b) { return b - a < 0.01; };
    places.erase(std::unique(places.begin(), places.end(), is_same), places.end());
    return places;
}

Scores scores_of(const std::vector<Segment>& creases) {
    Scores scores;
    for (const Segment& crease : creases)
        if (crease.from.x == crease.to.x)
            scores.along_mm.push_back(crease.from.x);
        else
            scores.across_mm.push_back(crease.from.y);
    return {distinct(std::move(scores.along_mm)), distinct(std::move(scores.across_mm))};
}

}  // namespace

FlatMeasures measure(const FlatBlank& blank) {
    FlatMeasures result{0, 0, total_length(blank.creases), 0, 0, scores_of(blank.creases)};
    double borders = 0, shared = 0;
    for (std::size_t i = 0; i < blank.cells.size(); ++i) {
        const FlatCell& cell = blank.cells[i];
        const double area = net_area(cell);
        result.area_mm2 += area;
        if (!cell.is_joined && !cell.is_plain) result.print_area_mm2 += area;
        if (cell.is_joined && cell.parent) result.joint_mm += total_length(crease_of(cell, blank.cells[*cell.parent]));
        borders += length_of_borders(cell);
        for (std::size_t j = 0; j < i; ++j) shared += total_length(shared_edges(cell, blank.cells[j]));
    }
    // Creases are among what is shared.
    result.cut_mm = borders - shared - result.crease_mm;
    return result;
}

}  // namespace flutebook::blanks
