// Turns cells about their creases, parents before children.
#include "host/blanks/fold.hpp"

#include <algorithm>

namespace flutebook::blanks {

namespace {

constexpr double degree = 3.14159265358979323846 / 180;

// A turn about a line of the flat blank, by which `v` (square to it, away from the parent) rises towards the reader.
struct CreaseTurn {
    Vec3 on_line, u, v;
    double cosine, sine;

    Vec3 turned(const Vec3& direction) const {
        const Vec3 n = {0, 0, 1};
        const double along = dot(direction, u), away = dot(direction, v), up = dot(direction, n);
        return along * u + (away * cosine - up * sine) * v + (away * sine + up * cosine) * n;
    }
    Vec3 turned_point(const Vec3& point) const { return on_line + turned(point - on_line); }
};

CreaseTurn crease_turn(const FlatCell& cell, double share) {
    const Vec3 from = in_space(cell.hinge.from), along = in_space(cell.hinge.to) - from;
    const double span = length(along);
    const Vec3 u = span > 0 ? 1 / span * along : Vec3{1, 0, 0};
    Vec3 v = cross({0, 0, 1}, u);
    if (dot(in_space(middle_of(cell.outline)) - from, v) < 0) v = -1 * v;
    const double angle = cell.angle_deg * share * degree;
    return {from, u, v, std::cos(angle), std::sin(angle)};
}

Placement after(const Placement& parent, const CreaseTurn& turn) {
    return {parent.placed(turn.turned_point({0, 0, 0})), parent.turned(turn.turned({1, 0, 0})),
            parent.turned(turn.turned({0, 1, 0})), parent.turned(turn.turned({0, 0, 1}))};
}

// How much of each cell's own fold is done.
std::vector<double> shares_folded(const FlatBlank& blank, double steps_done) {
    std::vector<double> shares(blank.cells.size(), 0);
    for (std::size_t step = 0; step < blank.fold.size(); ++step) {
        const double share = std::clamp(steps_done - static_cast<double>(step), 0.0, 1.0);
        for (const std::size_t cell : blank.fold[step]) shares[cell] = share;
    }
    return shares;
}

std::vector<Vec3> placed(const Placement& placement, const Polygon& polygon) {
    std::vector<Vec3> corners;
    corners.reserve(polygon.size());
    for (const Point& corner : polygon) corners.push_back(placement.placed(in_space(corner)));
    return corners;
}

}  // namespace

Point middle_of(const Polygon& polygon) {
    double twice_area = 0, x = 0, y = 0;
    Point mean = {0, 0};
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        // From the first corner, so that a small cell far from the origin keeps its digits.
        const Point a = {polygon[i].x - polygon[0].x, polygon[i].y - polygon[0].y};
        const Point& next = polygon[(i + 1) % polygon.size()];
        const Point b = {next.x - polygon[0].x, next.y - polygon[0].y};
        const double part = a.x * b.y - b.x * a.y;
        twice_area += part;
        x += (a.x + b.x) * part;
        y += (a.y + b.y) * part;
        mean = {mean.x + polygon[i].x / static_cast<double>(polygon.size()),
                mean.y + polygon[i].y / static_cast<double>(polygon.size())};
    }
    if (std::abs(twice_area) < 1e-9) return mean;
    return {polygon[0].x + x / (3 * twice_area), polygon[0].y + y / (3 * twice_area)};
}

std::vector<Placement> fold(const FlatBlank& blank, double steps_done) {
    const std::vector<double> shares = shares_folded(blank, steps_done);
    std::vector<Placement> placements;
    placements.reserve(blank.cells.size());
    for (std::size_t i = 0; i < blank.cells.size(); ++i) {
        const FlatCell& cell = blank.cells[i];
        if (cell.parent)
            placements.push_back(after(placements[*cell.parent], crease_turn(cell, shares[i])));
        else
            placements.push_back({{0, 0, 0}, {1, 0, 0}, {0, 1, 0}, {0, 0, 1}});
    }
    return placements;
}

std::vector<FoldedFace> folded_faces(const FlatBlank& blank, double steps_done) {
    const std::vector<Placement> placements = fold(blank, steps_done);
    std::vector<FoldedFace> faces;
    for (std::size_t i = 0; i < blank.cells.size(); ++i) {
        FoldedFace face = {i, placed(placements[i], blank.cells[i].outline), {}, placements[i].z};
        for (const Polygon& hole : blank.cells[i].holes) face.holes.push_back(placed(placements[i], hole));
        faces.push_back(std::move(face));
    }
    return faces;
}

}  // namespace flutebook::blanks
