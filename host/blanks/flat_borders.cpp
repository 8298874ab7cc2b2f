// Edges lie on one another where they share a line and a stretch of it; which way they run does not matter.
#include "host/blanks/flat_borders.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "host/blanks/flat_regions.hpp"

namespace flutebook::blanks {

namespace {

constexpr double same_line_mm = 1e-6;

bool may_touch(const CellBounds& a, const CellBounds& b) {
    return a.low.x <= b.high.x + same_line_mm && b.low.x <= a.high.x + same_line_mm &&
           a.low.y <= b.high.y + same_line_mm && b.low.y <= a.high.y + same_line_mm;
}

// The part of `edge` that `other` lies on.
std::optional<Segment> part_shared(const Segment& edge, const Segment& other) {
    const double length = length_of(edge);
    if (length < same_line_mm) return std::nullopt;
    const Point along{(edge.to.x - edge.from.x) / length, (edge.to.y - edge.from.y) / length};
    const auto distance = [&](const Point& point) {
        return std::abs((point.x - edge.from.x) * along.y - (point.y - edge.from.y) * along.x);
    };
    if (distance(other.from) > same_line_mm || distance(other.to) > same_line_mm) return std::nullopt;
    const auto place = [&](const Point& point) {
        return (point.x - edge.from.x) * along.x + (point.y - edge.from.y) * along.y;
    };
    const double low = std::max(0.0, std::min(place(other.from), place(other.to)));
    const double high = std::min(length, std::max(place(other.from), place(other.to)));
    if (high - low < same_line_mm) return std::nullopt;
    const auto at = [&](double place_mm) -> Point {
        // The ends stay what they are, to the bit.
        if (place_mm == 0) return edge.from;
        if (place_mm == length) return edge.to;
        return {edge.from.x + place_mm * along.x, edge.from.y + place_mm * along.y};
    };
    return Segment{at(low), at(high)};
}

Segment edge_at(const Polygon& polygon, std::size_t i) {
    return {polygon[i], polygon[(i + 1) % polygon.size()]};
}

}  // namespace

double length_of(const Segment& segment) {
    const double x = segment.to.x - segment.from.x, y = segment.to.y - segment.from.y;
    // Along an axis no root is taken.
    if (x == 0) return std::abs(y);
    if (y == 0) return std::abs(x);
    return std::hypot(x, y);
}

double length_around(const Polygon& polygon) {
    double length = 0;
    for (std::size_t i = 0; i < polygon.size(); ++i) length += length_of(edge_at(polygon, i));
    return length;
}

std::vector<Segment> shared_edges(const FlatCell& one, const FlatCell& other) {
    std::vector<Segment> shared;
    if (!may_touch(bounds_of(one.outline), bounds_of(other.outline))) return shared;
    for (std::size_t i = 0; i < one.outline.size(); ++i)
        for (std::size_t j = 0; j < other.outline.size(); ++j)
            if (const auto part = part_shared(edge_at(one.outline, i), edge_at(other.outline, j)))
                shared.push_back(*part);
    return shared;
}

std::vector<Segment> crease_of(const FlatCell& cell, const FlatCell& parent) {
    std::vector<Segment> creases;
    for (std::size_t i = 0; i < cell.outline.size(); ++i) {
        const auto on_hinge = part_shared(cell.hinge, edge_at(cell.outline, i));
        if (!on_hinge) continue;
        for (std::size_t j = 0; j < parent.outline.size(); ++j)
            if (const auto part = part_shared(*on_hinge, edge_at(parent.outline, j))) creases.push_back(*part);
    }
    return creases;
}

}  // namespace flutebook::blanks
