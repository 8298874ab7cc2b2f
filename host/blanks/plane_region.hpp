// Parts of a plane: what two cells have in common where they lie on one another, what many of them cover together, how
// far from every edge a point lies.
//
// Areas are summed strip by strip between corners; within a strip every border is straight.
#pragma once

#include <vector>

#include "host/blanks/fold.hpp"

namespace flutebook::blanks {

/// An outline and its holes: a point lies within where a ray from it meets an odd number of borders.
struct Region {
    std::vector<Polygon> rings;
};

struct Rectangle {
    double left, low, right, high;
};

/// What two regions have in common: its area and its extent.
struct CommonArea {
    double area = 0;
    Rectangle extent = {0, 0, 0, 0};

    /// How far the two reach over one another: mean width across the longer side.
    [[nodiscard]] double depth() const;
};

/// The cell in the frame of fold.hpp, flat.
[[nodiscard]] Region flat_region(const FlatCell& cell);

[[nodiscard]] double area_of(const Region& region);
[[nodiscard]] Rectangle extent_of(const Region& region);
[[nodiscard]] CommonArea common_area(const Region& a, const Region& b);

/// Area of `frame` that the regions cover together.
[[nodiscard]] double covered_area(const std::vector<Region>& regions, const Rectangle& frame);

/// Distance of `point` from the nearest border; below 0 where it lies outside.
[[nodiscard]] double depth_within(const Region& region, const Point& point);

}  // namespace flutebook::blanks
