// A blank folded in space: each cell turns about its crease, step by step. The proof and the drawings both see the box
// through this.
//
// A cell is a plane without thickness; code that measures adds the thickness of the board. The frame is right-handed,
// in mm: the flat blank lies in z = 0, x runs along the web, y up the drawing (against the y of the flat blank), z
// towards the reader.
#pragma once

#include <cmath>
#include <cstddef>
#include <vector>

#include "host/blanks/flat.hpp"

namespace flutebook::blanks {

struct Vec3 {
    double x, y, z;
};
inline Vec3 operator+(const Vec3& a, const Vec3& b) {
    return {a.x + b.x, a.y + b.y, a.z + b.z};
}
inline Vec3 operator-(const Vec3& a, const Vec3& b) {
    return {a.x - b.x, a.y - b.y, a.z - b.z};
}
inline Vec3 operator*(double factor, const Vec3& a) {
    return {factor * a.x, factor * a.y, factor * a.z};
}
inline double dot(const Vec3& a, const Vec3& b) {
    return a.x * b.x + a.y * b.y + a.z * b.z;
}
inline Vec3 cross(const Vec3& a, const Vec3& b) {
    return {a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}
inline double length(const Vec3& a) {
    return std::sqrt(dot(a, a));
}

/// Where a cell has gone from the flat blank. The axes are of length 1 and square to one another; z is the side that
/// the reader sees on the flat blank: the inside of the box.
struct Placement {
    Vec3 origin, x, y, z;

    [[nodiscard]] Vec3 turned(const Vec3& direction) const {
        return direction.x * x + direction.y * y + direction.z * z;
    }
    [[nodiscard]] Vec3 placed(const Vec3& point) const { return origin + turned(point); }
    /// The point of the flat blank that has come to `point`.
    [[nodiscard]] Vec3 unfolded(const Vec3& point) const {
        const Vec3 from_origin = point - origin;
        return {dot(from_origin, x), dot(from_origin, y), dot(from_origin, z)};
    }
};

/// A point of the flat blank in the frame above.
inline Vec3 in_space(const Point& flat) {
    return {flat.x, -flat.y, 0};
}

/// Middle of a polygon's area; the mean of its corners where it has no area.
[[nodiscard]] Point middle_of(const Polygon& polygon);

/// Placements of all cells, in their order, after `steps_done` steps of the blank's fold: 0 is flat, 2.5 is two steps
/// and half of the third. The cell that stays never moves.
[[nodiscard]] std::vector<Placement> fold(const FlatBlank& blank, double steps_done);

/// A cell as it stands in space, for who draws it.
struct FoldedFace {
    std::size_t cell;  // index into FlatBlank::cells
    std::vector<Vec3> outline;
    std::vector<std::vector<Vec3>> holes;
    Vec3 normal;  // of the side that is the inside of the box
};

[[nodiscard]] std::vector<FoldedFace> folded_faces(const FlatBlank& blank, double steps_done);

}  // namespace flutebook::blanks
