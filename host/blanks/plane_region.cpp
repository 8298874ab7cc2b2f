// Calculates areas strip by strip.
#include "host/blanks/plane_region.hpp"

#include <algorithm>
#include <limits>

namespace flutebook::blanks {

namespace {

struct Interval {
    double from, to;
};

constexpr double strip_min_mm = 1e-9;  // thinner than rounding leaves nothing
constexpr int lines_a_strip = 4;       // borders may cross within a strip, and then its width bends

// Where the line at height y runs within the region, left to right.
std::vector<Interval> within(const Region& region, double y) {
    std::vector<double> crossings;
    for (const Polygon& ring : region.rings)
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const Point &a = ring[i], &b = ring[(i + 1) % ring.size()];
            if ((a.y <= y) == (b.y <= y)) continue;
            crossings.push_back(a.x + (y - a.y) / (b.y - a.y) * (b.x - a.x));
        }
    std::sort(crossings.begin(), crossings.end());
    std::vector<Interval> intervals;
    for (std::size_t i = 0; i + 1 < crossings.size(); i += 2) intervals.push_back({crossings[i], crossings[i + 1]});
    return intervals;
}

std::vector<Interval> common(const std::vector<Interval>& a, const std::vector<Interval>& b) {
    std::vector<Interval> both;
    for (const Interval& first : a)
        for (const Interval& second : b) {
            const Interval part = {std::max(first.from, second.from), std::min(first.to, second.to)};
            if (part.from < part.to) both.push_back(part);
        }
    return both;
}

double united_length(std::vector<Interval> intervals) {
    std::sort(intervals.begin(), intervals.end(), [](const Interval& a, const Interval& b) { return a.from < b.from; });
    double sum = 0, reached = -std::numeric_limits<double>::infinity();
    for (const Interval& interval : intervals) {
        const double from = std::max(interval.from, reached);
        if (interval.to > from) sum += interval.to - from;
        reached = std::max(reached, interval.to);
    }
    return sum;
}

void add_heights(const Region& region, std::vector<double>& heights) {
    for (const Polygon& ring : region.rings)
        for (const Point& corner : ring) heights.push_back(corner.y);
}

// Calls `measure(y, weight)` for the lines between `low` and `high`; the weights add up to the height.
template <typename Measure>
void for_each_line(std::vector<double> heights, double low, double high, const Measure& measure) {
    heights.push_back(low);
    heights.push_back(high);
    std::sort(heights.begin(), heights.end());
    for (std::size_t i = 0; i + 1 < heights.size(); ++i) {
        const double from = std::max(heights[i], low), to = std::min(heights[i + 1], high);
        if (to - from < strip_min_mm) continue;
        const double weight = (to - from) / lines_a_strip;
        for (int line = 0; line < lines_a_strip; ++line) measure(from + weight * (line + 0.5), weight);
    }
}

double distance_to_edge(const Point& p, const Point& a, const Point& b) {
    const double dx = b.x - a.x, dy = b.y - a.y, square = dx * dx + dy * dy;
    const double along = square > 0 ? std::clamp(((p.x - a.x) * dx + (p.y - a.y) * dy) / square, 0.0, 1.0) : 0;
    return std::hypot(p.x - a.x - along * dx, p.y - a.y - along * dy);
}

}  // namespace

double CommonArea::depth() const {
    const double longer = std::max(extent.right - extent.left, extent.high - extent.low);
    return longer > 0 ? area / longer : 0;
}

Region flat_region(const FlatCell& cell) {
    Region region;
    region.rings.push_back(cell.outline);
    for (const Polygon& hole : cell.holes) region.rings.push_back(hole);
    for (Polygon& ring : region.rings)
        for (Point& corner : ring) corner.y = -corner.y;
    return region;
}

double area_of(const Region& region) {
    return common_area(region, region).area;
}

Rectangle extent_of(const Region& region) {
    const double far = std::numeric_limits<double>::infinity();
    Rectangle extent = {far, far, -far, -far};
    for (const Polygon& ring : region.rings)
        for (const Point& corner : ring)
            extent = {std::min(extent.left, corner.x), std::min(extent.low, corner.y), std::max(extent.right, corner.x),
                      std::max(extent.high, corner.y)};
    return extent;
}

CommonArea common_area(const Region& a, const Region& b) {
    const Rectangle first = extent_of(a), second = extent_of(b);
    const double low = std::max(first.low, second.low), high = std::min(first.high, second.high);
    if (low >= high || first.left >= second.right || second.left >= first.right) return {};
    std::vector<double> heights;
    add_heights(a, heights);
    add_heights(b, heights);
    CommonArea result;
    for_each_line(heights, low, high, [&](double y, double weight) {
        for (const Interval& part : common(within(a, y), within(b, y))) {
            if (result.area == 0) result.extent = {part.from, y - weight / 2, part.to, y + weight / 2};
            result.area += weight * (part.to - part.from);
            result.extent = {std::min(result.extent.left, part.from), std::min(result.extent.low, y - weight / 2),
                             std::max(result.extent.right, part.to), std::max(result.extent.high, y + weight / 2)};
        }
    });
    return result;
}

double covered_area(const std::vector<Region>& regions, const Rectangle& frame) {
    if (frame.low >= frame.high || frame.left >= frame.right) return 0;
    std::vector<double> heights;
    for (const Region& region : regions) add_heights(region, heights);
    double area = 0;
    for_each_line(heights, frame.low, frame.high, [&](double y, double weight) {
        std::vector<Interval> covered;
        for (const Region& region : regions)
            for (const Interval& part : common(within(region, y), {{frame.left, frame.right}})) covered.push_back(part);
        area += weight * united_length(std::move(covered));
    });
    return area;
}

double depth_within(const Region& region, const Point& point) {
    double nearest = std::numeric_limits<double>::infinity();
    bool is_within = false;
    for (const Polygon& ring : region.rings)
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const Point &a = ring[i], &b = ring[(i + 1) % ring.size()];
            nearest = std::min(nearest, distance_to_edge(point, a, b));
            if ((a.y <= point.y) == (b.y <= point.y)) continue;
            if (a.x + (point.y - a.y) / (b.y - a.y) * (b.x - a.x) > point.x) is_within = !is_within;
        }
    return is_within ? nearest : -nearest;
}

}  // namespace flutebook::blanks
