// Layers of walls and distances between them.
#include "host/geometry/folded_box.hpp"

#include <algorithm>
#include <limits>

namespace flutebook::geometry {

namespace {

constexpr double square_enough = 1e-6;  // cosine between directions that count as square, sine of those as parallel

std::size_t step_of(const FlatBlank& blank, std::size_t cell) {
    for (std::size_t step = 0; step < blank.fold.size(); ++step)
        for (const std::size_t folded_cell : blank.fold[step])
            if (folded_cell == cell) return step + 1;
    return 0;
}

// Layers from the outermost to the innermost; those on one plane in the order in which they are folded.
std::vector<WallLayer> in_turn(const FlatBlank& blank, std::vector<WallLayer> layers) {
    std::stable_sort(layers.begin(), layers.end(),
                     [](const WallLayer& a, const WallLayer& b) { return a.depth_mm < b.depth_mm; });
    for (auto first = layers.begin(); first != layers.end();) {
        const double plane = first->depth_mm;
        const auto last = std::find_if(
            first, layers.end(), [&](const WallLayer& layer) { return layer.depth_mm > plane + blank.caliper_mm / 2; });
        std::stable_sort(first, last, [&](const WallLayer& a, const WallLayer& b) {
            return step_of(blank, a.cell) < step_of(blank, b.cell);
        });
        first = last;
    }
    return layers;
}

// How far inwards the innermost layer lies when the outermost stays where it is drawn.
double pushed_in_mm(const std::vector<WallLayer>& layers, double caliper_mm) {
    std::vector<double> depths;
    double innermost = 0;
    for (const WallLayer& layer : layers) {
        double depth = layer.depth_mm;
        for (std::size_t under = 0; under < depths.size(); ++under)
            if (depths[under] + caliper_mm > depth &&
                common_area(layers[under].region, layer.region).depth() > caliper_mm)
                depth = depths[under] + caliper_mm;
        depths.push_back(depth);
        innermost = std::max(innermost, depth);
    }
    return innermost;
}

double outermost_depth(const std::vector<WallLayer>& layers) {
    double depth = 0;
    for (const WallLayer& layer : layers) depth = std::min(depth, layer.depth_mm);
    return depth;
}

BoxEnd wall_end(const FoldedBlank& folded, std::size_t wall, const Vec3& inwards, double at_mm) {
    const FlatBlank& blank = *folded.blank;
    std::vector<WallLayer> layers = in_turn(blank, layers_at(folded, wall, inwards));
    BoxEnd end = {at_mm, wall, pushed_in_mm(layers, blank.caliper_mm), 0, outermost_depth(layers), 0, 0};
    for (const WallLayer& layer : layers) end.innermost_out_mm = std::max(end.innermost_out_mm, layer.depth_mm);
    end.thickness_mm = end.innermost_in_mm - end.outermost_mm + blank.caliper_mm;
    layers.erase(std::remove_if(layers.begin(), layers.end(),
                                [&](const WallLayer& layer) { return blank.cells[layer.cell].is_joined; }),
                 layers.end());
    end.thickness_less_tabs_mm = pushed_in_mm(layers, blank.caliper_mm) - outermost_depth(layers) + blank.caliper_mm;
    return end;
}

std::array<double, 2> extent_of_cell(const FoldedBlank& folded, std::size_t cell, const Vec3& direction) {
    std::array<double, 2> extent = {std::numeric_limits<double>::infinity(), -std::numeric_limits<double>::infinity()};
    for (const Point& corner : folded.blank->cells[cell].outline) {
        const double at = dot(folded.placements[cell].placed(in_space(corner)), direction);
        extent = {std::min(extent[0], at), std::max(extent[1], at)};
    }
    return extent;
}

double plane_along(const FoldedBlank& folded, std::size_t cell, const Vec3& direction) {
    const std::array<double, 2> extent = extent_of_cell(folded, cell, direction);
    return (extent[0] + extent[1]) / 2;
}

Vec3 middle_in_space(const FoldedBlank& folded, std::size_t cell) {
    return folded.placements[cell].placed(in_space(middle_of(folded.blank->cells[cell].outline)));
}

// Cells between which the other sides are measured: the rim is the lowest of their tops.
double rim_along(const FoldedBlank& folded, const Vec3& direction) {
    double rim = std::numeric_limits<double>::infinity();
    for (const std::optional<plant::InsideSpan>& span : folded.blank->inside) {
        if (!span || !span->to) continue;
        for (const std::size_t wall : {span->from, *span->to})
            rim = std::min(rim, extent_of_cell(folded, wall, direction)[1]);
    }
    return std::isinf(rim) ? extent_along(folded, direction)[1] : rim;
}

Vec3 axis_direction(const FoldedBlank& folded, const plant::InsideSpan& span) {
    const Vec3 normal = folded.placements[span.from].z;
    Vec3 middle = {0, 0, 0};
    if (span.to) {
        middle = middle_in_space(folded, *span.to);
    } else {
        const double share = 1 / static_cast<double>(folded.placements.size());
        for (std::size_t i = 0; i < folded.placements.size(); ++i) middle = middle + share * middle_in_space(folded, i);
    }
    return dot(middle - middle_in_space(folded, span.from), normal) < 0 ? -1 * normal : normal;
}

BoxAxis measured_axis(const FoldedBlank& folded, const plant::InsideSpan& span) {
    const Vec3 direction = axis_direction(folded, span);
    const BoxEnd from = wall_end(folded, span.from, direction, plane_along(folded, span.from, direction));
    if (!span.to) return {direction, from, {rim_along(folded, direction), {}, 0, 0, 0, 0, 0}, true};
    const BoxEnd to = wall_end(folded, *span.to, -1 * direction, plane_along(folded, *span.to, direction));
    return {direction, from, to, folded.are_parallel(span.from, *span.to)};
}

// Half a thickness at each wall; nothing at a rim.
double half_calipers(const BoxAxis& axis, double caliper_mm) {
    return (axis.from.wall ? caliper_mm / 2 : 0) + (axis.to.wall ? caliper_mm / 2 : 0);
}

}  // namespace

bool FoldedBlank::are_parallel(std::size_t a, std::size_t b) const {
    return length(cross(placements[a].z, placements[b].z)) < square_enough;
}

Region FoldedBlank::seen_from(std::size_t cell, std::size_t other) const {
    Region region = regions[other];
    for (Polygon& ring : region.rings)
        for (Point& corner : ring) {
            const Vec3 seen = placements[cell].unfolded(placements[other].placed({corner.x, corner.y, 0}));
            corner = {seen.x, seen.y};
        }
    return region;
}

FoldedBlank folded(const FlatBlank& blank, double steps_done) {
    FoldedBlank result = {&blank, {}, fold(blank, steps_done)};
    for (const FlatCell& cell : blank.cells) result.regions.push_back(flat_region(cell));
    return result;
}

std::vector<WallLayer> layers_at(const FoldedBlank& folded, std::size_t wall, const Vec3& inwards) {
    const double caliper = folded.blank->caliper_mm;
    std::vector<WallLayer> layers;
    for (std::size_t i = 0; i < folded.placements.size(); ++i) {
        if (!folded.are_parallel(wall, i)) continue;
        const double depth = dot(middle_in_space(folded, i) - middle_in_space(folded, wall), inwards);
        if (depth < -outer_reach_mm(caliper) || depth > layer_depth_calipers * caliper) continue;
        layers.push_back({i, depth, folded.seen_from(wall, i)});
    }
    return layers;
}

std::array<double, 2> extent_along(const FoldedBlank& folded, const Vec3& direction) {
    std::array<double, 2> extent = {std::numeric_limits<double>::infinity(), -std::numeric_limits<double>::infinity()};
    for (std::size_t i = 0; i < folded.placements.size(); ++i) {
        const std::array<double, 2> cell = extent_of_cell(folded, i, direction);
        extent = {std::min(extent[0], cell[0]), std::max(extent[1], cell[1])};
    }
    return extent;
}

InsideRange BoxAxis::inside(double caliper_mm) const {
    const double between = to.at_mm - from.at_mm - half_calipers(*this, caliper_mm);
    return {between - from.innermost_in_mm - to.innermost_in_mm, between - from.innermost_out_mm - to.innermost_out_mm};
}

double BoxAxis::outside_mm(double caliper_mm) const {
    return to.at_mm - from.at_mm + half_calipers(*this, caliper_mm) - from.outermost_mm - to.outermost_mm;
}

std::array<std::optional<BoxAxis>, 3> box_axes(const FoldedBlank& folded) {
    std::array<std::optional<BoxAxis>, 3> axes;
    for (std::size_t side = 0; side < axes.size(); ++side)
        if (folded.blank->inside[side]) axes[side] = measured_axis(folded, *folded.blank->inside[side]);
    return axes;
}

double walls_mm(const BoxAxis& axis, double size_mm, double caliper_mm) {
    const double with_tabs = axis.from.thickness_mm + axis.to.thickness_mm;
    const double without = axis.from.thickness_less_tabs_mm + axis.to.thickness_less_tabs_mm;
    const double room = std::max(0.0, axis.inside(caliper_mm).pushed_out_mm - size_mm);
    return std::min(with_tabs, without + room);
}

}  // namespace flutebook::geometry
