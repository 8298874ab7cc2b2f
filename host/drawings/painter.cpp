// One face is behind another if it lies wholly on the far side of the other's plane. Where neither says so (faces that
// cut through one another, or go round in a ring) the middle of a face decides, which is near enough for a picture.
#include "host/drawings/painter.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace flutebook::drawings {

namespace {

using blanks::Vec3;

constexpr double one_plane_mm = 0.5;  // half of the thinnest board

struct Extent {
    double least, most;
};

Extent extent_along(const std::vector<Vec3>& points, const Vec3& direction) {
    Extent result{dot(points.front(), direction), dot(points.front(), direction)};
    for (const Vec3& point : points) {
        result.least = std::min(result.least, dot(point, direction));
        result.most = std::max(result.most, dot(point, direction));
    }
    return result;
}

// Whether some line of the picture parts the two along an edge of the first.
bool is_parted_by_edge(const PaintedFace& first, const PaintedFace& second, const View& view) {
    const std::vector<Vec3>& outline = first.face.outline;
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const Vec3 edge = outline[(i + 1) % outline.size()] - outline[i];
        const double x = dot(edge, view.right), y = dot(edge, view.down), size = std::hypot(x, y);
        if (size < 1e-6) continue;
        const Vec3 square = (-y / size) * view.right + (x / size) * view.down;
        const Extent one = extent_along(outline, square), other = extent_along(second.face.outline, square);
        if (one.most < other.least + 1e-6 || other.most < one.least + 1e-6) return true;
    }
    return false;
}

bool overlap_in_picture(const PaintedFace& first, const PaintedFace& second, const View& view) {
    return !is_parted_by_edge(first, second, view) && !is_parted_by_edge(second, first, view);
}

enum class PaintOrder { first_behind, second_behind, unknown };

// By the plane of the first: where the second lies wholly on one side of it.
PaintOrder by_plane(const PaintedFace& first, const PaintedFace& second, const View& view, double thickness_mm) {
    Vec3 normal = first.face.normal;
    if (dot(normal, view.nearer) < 0) normal = -1.0 * normal;
    const double plane = dot(first.face.outline.front(), normal);
    const Extent other = extent_along(second.face.outline, normal);
    const bool is_nearer = other.least > plane - thickness_mm, is_farther = other.most < plane + thickness_mm;
    if (is_nearer == is_farther) return PaintOrder::unknown;
    return is_nearer ? PaintOrder::first_behind : PaintOrder::second_behind;
}

// Of two that lie on one another, by where they are drawn; on one plane who sees the inside sees the earlier one before
// the later.
PaintOrder by_layer(const PaintedFace& first, const PaintedFace& second, const View& view) {
    const Vec3& normal = first.face.normal;
    const Extent other = extent_along(second.face.outline, normal);
    const double apart = (other.least + other.most) / 2 - dot(first.face.outline.front(), normal);
    if (other.most - other.least < one_plane_mm && std::abs(apart) > one_plane_mm)
        return (apart > 0) == (dot(normal, view.nearer) > 0) ? PaintOrder::first_behind : PaintOrder::second_behind;
    if (first.turn == second.turn) return PaintOrder::unknown;
    const bool is_inside_seen = dot(first.face.normal, view.nearer) > 0;
    return (first.turn < second.turn) != is_inside_seen ? PaintOrder::first_behind : PaintOrder::second_behind;
}

bool lies_on(const PaintedFace& first, const PaintedFace& second, double thickness_mm) {
    const double plane = dot(first.face.outline.front(), first.face.normal);
    const Extent other = extent_along(second.face.outline, first.face.normal);
    return other.least > plane - thickness_mm && other.most < plane + thickness_mm;
}

PaintOrder order_of(const PaintedFace& first, const PaintedFace& second, const View& view, double thickness_mm) {
    if (!overlap_in_picture(first, second, view)) return PaintOrder::unknown;
    if (lies_on(first, second, thickness_mm)) return by_layer(first, second, view);
    const PaintOrder order = by_plane(first, second, view, thickness_mm);
    if (order != PaintOrder::unknown) return order;
    const PaintOrder turned = by_plane(second, first, view, thickness_mm);
    if (turned == PaintOrder::unknown) return turned;
    return turned == PaintOrder::first_behind ? PaintOrder::second_behind : PaintOrder::first_behind;
}

double middle_depth(const PaintedFace& face, const View& view) {
    const Extent depth = extent_along(face.face.outline, view.nearer);
    return (depth.least + depth.most) / 2;
}

}  // namespace

std::vector<std::size_t> painting_order(const std::vector<PaintedFace>& faces, const View& view, double thickness_mm) {
    const std::size_t count = faces.size();
    std::vector<std::vector<std::size_t>> behind(count);  // faces that are painted before each
    for (std::size_t a = 0; a < count; ++a)
        for (std::size_t b = a + 1; b < count; ++b) {
            const PaintOrder order = order_of(faces[a], faces[b], view, thickness_mm);
            if (order == PaintOrder::first_behind) behind[b].push_back(a);
            if (order == PaintOrder::second_behind) behind[a].push_back(b);
        }
    std::vector<bool> is_painted(count, false);
    std::vector<std::size_t> result;
    const auto is_free = [&](std::size_t face) {
        return std::all_of(behind[face].begin(), behind[face].end(),
                           [&](std::size_t other) { return is_painted[other]; });
    };
    while (result.size() < count) {
        std::size_t next = count;
        bool next_is_free = false;
        for (std::size_t face = 0; face < count; ++face) {
            if (is_painted[face]) continue;
            const bool free = is_free(face);
            if (next == count || (free && !next_is_free) ||
                (free == next_is_free && middle_depth(faces[face], view) < middle_depth(faces[next], view))) {
                next = face;
                next_is_free = free;
            }
        }
        is_painted[next] = true;
        result.push_back(next);
    }
    return result;
}

}  // namespace flutebook::drawings
