// A rectangle goes round from its upper left corner.
#include "host/reports/drawing_shapes.hpp"

#include <utility>

namespace flutebook::reports {

namespace {

using render::DrawnPoint;
using render::DrawnPolygon;

std::vector<DrawnPoint> rectangle(DrawnPoint corner, double length_mm, double width_mm) {
    const double right = corner.x_mm + length_mm, bottom = corner.y_mm + width_mm;
    return {corner, {right, corner.y_mm}, {right, bottom}, {corner.x_mm, bottom}};
}

}  // namespace

DrawnPolygon board_rectangle(DrawnPoint corner, double length_mm, double width_mm, std::string name) {
    return {DrawnPolygon::Kind::board, rectangle(corner, length_mm, width_mm), std::move(name)};
}

DrawnPolygon lost_rectangle(DrawnPoint corner, double length_mm, double width_mm, std::string cause, std::string name) {
    return {DrawnPolygon::Kind::lost, rectangle(corner, length_mm, width_mm), std::move(name), std::move(cause)};
}

std::string length_unit(const ShownUnits& units) {
    const std::string one = units.length(1);
    return one.substr(one.find(' ') + 1);
}

void add_dimension(render::Drawing& drawing, const ShownUnits& units, DimensionLane lane, double from_mm, double to_mm,
                   const std::string& name) {
    const std::string length = units.length(to_mm - from_mm);
    drawing.dimensions.push_back({lane.side, lane.lane, from_mm, to_mm, length.substr(0, length.find(' ')),
                                  name.empty() ? length : name + ": " + length});
}

void add_chain(render::Drawing& drawing, const ShownUnits& units, render::DrawnDimension::Side side,
               const std::vector<double>& lengths_mm, double whole_mm, const std::string& name) {
    double from = 0;
    for (const double length : lengths_mm) {
        if (lengths_mm.size() > 1) add_dimension(drawing, units, {side, 0}, from, from + length, "");
        from += length;
    }
    add_dimension(drawing, units, {side, lengths_mm.size() > 1 ? std::size_t(1) : 0}, 0, whole_mm, name);
}

}  // namespace flutebook::reports
