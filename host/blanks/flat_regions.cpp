// Boost.Geometry does what is more than comparing corners; most blanks never need it.
#include "host/blanks/flat_regions.hpp"

#include <algorithm>
#include <boost/geometry.hpp>
#include <boost/geometry/geometries/point_xy.hpp>
#include <boost/geometry/geometries/polygon.hpp>
#include <cmath>

namespace flutebook::blanks {

namespace {

using RegionPoint = boost::geometry::model::d2::point_xy<double>;
using CutRegion = boost::geometry::model::polygon<RegionPoint>;
using CutRegions = boost::geometry::model::multi_polygon<CutRegion>;

// mm2: less is the rounding of sums, no board.
constexpr double no_area = 1e-3;
constexpr double no_length = 1e-6;

template <typename Ring>
void fill_ring(Ring& ring, const Polygon& polygon) {
    for (const Point& point : polygon) ring.emplace_back(point.x, point.y);
    ring.emplace_back(polygon.front().x, polygon.front().y);
}

CutRegion region_of(const Polygon& outline) {
    CutRegion region;
    fill_ring(region.outer(), outline);
    boost::geometry::correct(region);
    return region;
}

CutRegion region_of(const FlatCell& cell) {
    CutRegion region;
    fill_ring(region.outer(), cell.outline);
    region.inners().resize(cell.holes.size());
    for (std::size_t i = 0; i < cell.holes.size(); ++i) fill_ring(region.inners()[i], cell.holes[i]);
    boost::geometry::correct(region);
    return region;
}

template <typename Ring>
Polygon polygon_of(const Ring& ring) {
    Polygon polygon;
    for (std::size_t i = 0; i + 1 < ring.size(); ++i) polygon.push_back({ring[i].x(), ring[i].y()});
    return polygon;
}

}  // namespace

bool is_simple(const Polygon& outline) {
    const CutRegion region = region_of(outline);
    return boost::geometry::is_valid(region) && boost::geometry::area(region) > no_area;
}

const char* cut_from(FlatCell& cell, const Polygon& hole) {
    if (!is_simple(hole)) return "whose outline crosses itself or holds no area";
    const CutRegion whole = region_of(cell), cut = region_of(hole);
    CutRegions left;
    boost::geometry::difference(whole, cut, left);
    const double area = boost::geometry::area(whole) - boost::geometry::area(cut);
    if (std::abs(boost::geometry::area(left) - area) > no_area) return "leaves its cell or overlaps another";
    if (left.size() != 1) return "parts its cell";
    cell.outline = polygon_of(left.front().outer());
    cell.holes.clear();
    for (const auto& inner : left.front().inners()) cell.holes.push_back(polygon_of(inner));
    return nullptr;
}

CellBounds bounds_of(const Polygon& polygon) {
    CellBounds extent{polygon.front(), polygon.front()};
    for (const Point& point : polygon) {
        extent.low = {std::min(extent.low.x, point.x), std::min(extent.low.y, point.y)};
        extent.high = {std::max(extent.high.x, point.x), std::max(extent.high.y, point.y)};
    }
    return extent;
}

double shared_area(const FlatCell& one, const FlatCell& other) {
    const CellBounds a = bounds_of(one.outline), b = bounds_of(other.outline);
    const double width = std::min(a.high.x, b.high.x) - std::max(a.low.x, b.low.x);
    const double height = std::min(a.high.y, b.high.y) - std::max(a.low.y, b.low.y);
    if (width < no_length || height < no_length || width * height < no_area) return 0;
    CutRegions shared;
    boost::geometry::intersection(region_of(one), region_of(other), shared);
    const double area = boost::geometry::area(shared);
    return area < no_area ? 0 : area;
}

}  // namespace flutebook::blanks
