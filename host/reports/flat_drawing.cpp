// What is cut out is hatched below the cells. Creases are drawn as the style gives them; a cell's border is a cut where
// no crease lies on it.
#include "host/reports/flat_drawing.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "host/geometry/flat_figures.hpp"
#include "host/render/number_text.hpp"
#include "host/reports/drawing_shapes.hpp"

namespace flutebook::reports {

namespace {

using geometry::EdgeShare;
using geometry::FlatBlank;
using geometry::FlatCell;
using geometry::Point;
using geometry::Polygon;
using geometry::same_place_mm;
using geometry::Segment;
using render::Drawing;
using render::DrawnArrow;
using render::DrawnDimension;
using render::DrawnLine;
using render::DrawnPoint;
using render::DrawnPolygon;
using Side = DrawnDimension::Side;

DrawnPoint drawn(Point point) {
    return {point.x, point.y};
}

std::vector<DrawnPoint> drawn(const Polygon& polygon) {
    std::vector<DrawnPoint> result;
    for (const Point& point : polygon) result.push_back(drawn(point));
    return result;
}

struct CellBox {
    Point least, most;
};

CellBox box_of(const Polygon& polygon) {
    CellBox box{polygon.front(), polygon.front()};
    for (const Point& point : polygon) {
        box.least = {std::min(box.least.x, point.x), std::min(box.least.y, point.y)};
        box.most = {std::max(box.most.x, point.x), std::max(box.most.y, point.y)};
    }
    return box;
}

std::string cell_name(const ShownUnits& units, const FlatCell& cell, const CellBox& box) {
    std::string result =
        fmt::format("{}: {}", cell.name, units.lengths({box.most.x - box.least.x, box.most.y - box.least.y}));
    if (cell.parent) result += fmt::format(", folded by {}°", render::brief_number(cell.angle_deg, 2));
    return cell.is_joined ? result + ", joined" : result;
}

void add_cells(Drawing& drawing, const ShownUnits& units, const FlatBlank& blank) {
    for (const FlatCell& cell : blank.cells) {
        const CellBox box = box_of(cell.outline);
        DrawnPolygon polygon{cell.is_joined ? DrawnPolygon::Kind::joined : DrawnPolygon::Kind::board,
                             drawn(cell.outline), cell_name(units, cell, box)};
        for (const Polygon& hole : cell.holes) polygon.holes.push_back(drawn(hole));
        polygon.edge = DrawnPolygon::Edge::none;
        drawing.polygons.push_back(std::move(polygon));
        if (blank.cells.size() > 1)
            drawing.texts.push_back({{(box.least.x + box.most.x) / 2, (box.least.y + box.most.y) / 2},
                                     cell.name,
                                     box.most.x - box.least.x});
    }
}

void add_cuts(Drawing& drawing, const Segment& edge, const std::vector<Segment>& creases) {
    std::vector<EdgeShare> covered;
    for (const Segment& crease : creases)
        if (const EdgeShare span = geometry::share_covered(edge, crease); span.to > span.from) covered.push_back(span);
    std::sort(covered.begin(), covered.end(), [](const EdgeShare& a, const EdgeShare& b) { return a.from < b.from; });
    covered.push_back({1, 1});
    const double dx = edge.to.x - edge.from.x, dy = edge.to.y - edge.from.y;
    const auto at = [&](double share) { return DrawnPoint{edge.from.x + share * dx, edge.from.y + share * dy}; };
    double done = 0;
    for (const EdgeShare& span : covered) {
        if ((span.from - done) * std::hypot(dx, dy) > same_place_mm)
            drawing.lines.push_back({DrawnLine::Kind::cut, at(done), at(span.from), "cut"});
        done = std::max(done, span.to);
    }
}

void add_border(Drawing& drawing, const Polygon& polygon, const std::vector<Segment>& creases) {
    for (const Segment& edge : geometry::edges_of(polygon)) add_cuts(drawing, edge, creases);
}

bool runs_across(const Segment& segment) {
    return std::abs(segment.to.x - segment.from.x) < std::abs(segment.to.y - segment.from.y);
}

void add_creases(Drawing& drawing, const ShownUnits& units, const FlatBlank& blank) {
    for (const Segment& crease : blank.creases) {
        const double place = runs_across(crease) ? crease.from.x : crease.from.y;
        drawing.lines.push_back(
            {DrawnLine::Kind::crease, drawn(crease.from), drawn(crease.to), "crease at " + units.length(place)});
    }
}

// From one end of the blank to the other, by its creases.
void add_score_chain(Drawing& drawing, const ShownUnits& units, Side side, std::vector<double> places,
                     double whole_mm) {
    places.insert(places.begin(), 0);
    places.push_back(whole_mm);
    std::vector<double> parts;
    for (std::size_t i = 1; i < places.size(); ++i)
        if (places[i] - places[i - 1] > same_place_mm) parts.push_back(places[i] - places[i - 1]);
    add_chain(drawing, units, side, parts, whole_mm, side == Side::below ? "length" : "width");
}

}  // namespace

Drawing flat_drawing(const ShownUnits& units, const FlatBlank& blank) {
    Drawing drawing{blank.piece.empty() ? "Blank, flat" : fmt::format("Blank of {}, flat", blank.piece)};
    drawing.note =
        fmt::format("in {}; seen from the inside; creases dashed, what is cut out hatched", length_unit(units));
    drawing.arrows.push_back({DrawnArrow::Direction::up_and_down, "flutes"});
    drawing.polygons.push_back(lost_rectangle({0, 0}, blank.length_mm, blank.width_mm, "cut-out", "cut out"));
    add_cells(drawing, units, blank);
    for (const Segment& slot : blank.slots)
        drawing.lines.push_back({DrawnLine::Kind::slot, drawn(slot.from), drawn(slot.to), "slot"});
    for (const FlatCell& cell : blank.cells) {
        add_border(drawing, cell.outline, blank.creases);
        for (const Polygon& hole : cell.holes) add_border(drawing, hole, blank.creases);
    }
    add_creases(drawing, units, blank);
    const geometry::FlatFigures figures = geometry::figures_of(blank);
    add_score_chain(drawing, units, Side::below, figures.along_mm, blank.length_mm);
    add_score_chain(drawing, units, Side::left, figures.across_mm, blank.width_mm);
    return drawing;
}

}  // namespace flutebook::reports
