// A crease lies on the borders of two cells, and so does a cut of no width: what two borders share is taken off once,
// and creases once more.
#include "host/geometry/flat_figures.hpp"

#include <algorithm>
#include <cmath>

namespace flutebook::geometry {

namespace {

constexpr double one_mm2_in_m2 = 1e-6;

double net_area_mm2(const FlatCell& cell) {
    double result = area_of(cell.outline);
    for (const Polygon& hole : cell.holes) result -= area_of(hole);
    return result;
}

std::vector<Segment> borders_of(const FlatCell& cell) {
    std::vector<Segment> result = edges_of(cell.outline);
    for (const Polygon& hole : cell.holes)
        for (const Segment& edge : edges_of(hole)) result.push_back(edge);
    return result;
}

double shared_mm(const std::vector<Segment>& borders, const std::vector<Segment>& others) {
    double result = 0;
    for (const Segment& edge : borders)
        for (const Segment& other : others) {
            const EdgeShare share = share_covered(edge, other);
            result += (share.to - share.from) * length_of(edge);
        }
    return result;
}

double cut_of(const FlatBlank& blank, double crease_mm) {
    double result = -crease_mm;
    for (std::size_t i = 0; i < blank.cells.size(); ++i) {
        const std::vector<Segment> borders = borders_of(blank.cells[i]);
        for (const Segment& edge : borders) result += length_of(edge);
        for (std::size_t j = i + 1; j < blank.cells.size(); ++j)
            result -= shared_mm(borders, edges_of(blank.cells[j].outline));
    }
    return result;
}

bool runs_across(const Segment& crease) {
    return std::abs(crease.to.x - crease.from.x) < std::abs(crease.to.y - crease.from.y);
}

std::vector<double> distinct(std::vector<double> places) {
    std::sort(places.begin(), places.end());
    std::vector<double> result;
    for (const double place : places)
        if (result.empty() || place - result.back() > same_place_mm) result.push_back(place);
    return result;
}

}  // namespace

double area_of(const Polygon& polygon) {
    double twice = 0;
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        const Point &a = polygon[i], &b = polygon[(i + 1) % polygon.size()];
        twice += a.x * b.y - b.x * a.y;
    }
    return std::abs(twice) / 2;
}

double length_of(const Segment& segment) {
    return std::hypot(segment.to.x - segment.from.x, segment.to.y - segment.from.y);
}

std::vector<Segment> edges_of(const Polygon& polygon) {
    std::vector<Segment> result;
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        const Segment edge{polygon[i], polygon[(i + 1) % polygon.size()]};
        if (length_of(edge) > same_place_mm) result.push_back(edge);
    }
    return result;
}

EdgeShare share_covered(const Segment& edge, const Segment& other) {
    const double dx = edge.to.x - edge.from.x, dy = edge.to.y - edge.from.y, length = length_of(edge);
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

FlatFigures figures_of(const FlatBlank& blank) {
    FlatFigures result{};
    double area_mm2 = 0, print_mm2 = 0;
    for (const FlatCell& cell : blank.cells) {
        area_mm2 += net_area_mm2(cell);
        if (!cell.is_plain && !cell.is_joined) print_mm2 += net_area_mm2(cell);
        if (cell.is_joined && cell.parent) result.joint_mm += length_of(cell.hinge);
    }
    for (const Segment& crease : blank.creases) {
        result.crease_mm += length_of(crease);
        runs_across(crease) ? result.along_mm.push_back(crease.from.x) : result.across_mm.push_back(crease.from.y);
    }
    result.along_mm = distinct(std::move(result.along_mm));
    result.across_mm = distinct(std::move(result.across_mm));
    result.area_m2 = area_mm2 * one_mm2_in_m2;
    result.print_area_m2 = print_mm2 * one_mm2_in_m2;
    result.cut_mm = cut_of(blank, result.crease_mm);
    return result;
}

}  // namespace flutebook::geometry
