// What is cut out is hatched below the cells. Creases are drawn as the style gives them; a cell's border is a cut where
// no crease lies on it.
#include "host/drawings/flat_drawing.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "host/blanks/flat_borders.hpp"
#include "host/blanks/flat_measures.hpp"
#include "host/blanks/flat_regions.hpp"
#include "host/drawings/drawing_shapes.hpp"
#include "host/render/number_text.hpp"

namespace flutebook::drawings {

namespace {

using blanks::CellBounds;
using blanks::FlatBlank;
using blanks::FlatCell;
using blanks::Point;
using blanks::Polygon;
using blanks::Segment;
using render::Drawing;
using render::DrawnArrow;
using render::DrawnDimension;
using render::DrawnLine;
using render::DrawnPoint;
using render::DrawnPolygon;
using Side = DrawnDimension::Side;

constexpr double same_place_mm = 0.01;

DrawnPoint drawn(Point point) {
    return {point.x, point.y};
}

std::vector<DrawnPoint> drawn(const Polygon& polygon) {
    std::vector<DrawnPoint> result;
    for (const Point& point : polygon) result.push_back(drawn(point));
    return result;
}

std::string cell_name(const ShownUnits& units, const FlatCell& cell, const CellBounds& box) {
    std::string result =
        fmt::format("{}: {}", cell.name, units.lengths({box.high.x - box.low.x, box.high.y - box.low.y}));
    if (cell.parent) result += fmt::format(", folded by {}°", render::brief_number(cell.angle_deg, 2));
    return cell.is_joined ? result + ", joined" : result;
}

void add_cells(Drawing& drawing, const ShownUnits& units, const FlatBlank& blank) {
    for (const FlatCell& cell : blank.cells) {
        const CellBounds box = blanks::bounds_of(cell.outline);
        DrawnPolygon polygon{cell.is_joined ? DrawnPolygon::Kind::joined : DrawnPolygon::Kind::board,
                             drawn(cell.outline), cell_name(units, cell, box)};
        for (const Polygon& hole : cell.holes) polygon.holes.push_back(drawn(hole));
        polygon.edge = DrawnPolygon::Edge::none;
        drawing.polygons.push_back(std::move(polygon));
        if (blank.cells.size() > 1)
            drawing.texts.push_back(
                {{(box.low.x + box.high.x) / 2, (box.low.y + box.high.y) / 2}, cell.name, box.high.x - box.low.x});
    }
}

// A share of an edge, from 0 to 1 along it.
struct EdgeShare {
    double from, to;
};

// The share of `edge` that `other` lies on; from = to where it lies on none of it.
EdgeShare share_covered(const Segment& edge, const Segment& other) {
    const double dx = edge.to.x - edge.from.x, dy = edge.to.y - edge.from.y, length = blanks::length_of(edge);
    const auto away = [&](Point point) {
        return std::abs((point.x - edge.from.x) * dy - (point.y - edge.from.y) * dx) / length;
    };
    const auto share = [&](Point point) {
        return ((point.x - edge.from.x) * dx + (point.y - edge.from.y) * dy) / (length * length);
    };
    if (away(other.from) > same_place_mm || away(other.to) > same_place_mm) return {0, 0};
    const double a = share(other.from), b = share(other.to);
    const EdgeShare result{std::clamp(std::min(a, b), 0.0, 1.0), std::clamp(std::max(a, b), 0.0, 1.0)};
    return (result.to - result.from) * length > same_place_mm ? result : EdgeShare{0, 0};
}

void add_cuts(Drawing& drawing, const Segment& edge, const std::vector<Segment>& creases) {
    std::vector<EdgeShare> covered;
    for (const Segment& crease : creases)
        if (const EdgeShare span = share_covered(edge, crease); span.to > span.from) covered.push_back(span);
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
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        const Segment edge{polygon[i], polygon[(i + 1) % polygon.size()]};
        if (blanks::length_of(edge) > same_place_mm) add_cuts(drawing, edge, creases);
    }
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
        fmt::format("in {}; seen from the inside; creases dashed, what is cut out hatched", units.length_unit);
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
    const blanks::Scores scores = blanks::measure(blank).scores;
    add_score_chain(drawing, units, Side::below, scores.along_mm, blank.length_mm);
    add_score_chain(drawing, units, Side::left, scores.across_mm, blank.width_mm);
    return drawing;
}

}  // namespace flutebook::drawings
