// Layers of walls and distances between them.
#include "host/blanks/folded_box.hpp"

#include <algorithm>
#include <limits>

namespace flutebook::blanks {

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
    for (const std::optional<box_styles::InsideSpan>& span : folded.blank->inside) {
        if (!span || !span->to) continue;
        for (const std::size_t wall : {span->from, *span->to})
            rim = std::min(rim, extent_of_cell(folded, wall, direction)[1]);
    }
    return std::isinf(rim) ? extent_along(folded, direction)[1] : rim;
}

Vec3 axis_direction(const FoldedBlank& folded, const box_styles::InsideSpan& span) {
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

BoxAxis drawn_axis(const FoldedBlank& folded, const box_styles::InsideSpan& span) {
    const Vec3 direction = axis_direction(folded, span);
    BoxAxis axis = {direction, {}, {}, true};
    axis.from.at_mm = plane_along(folded, span.from, direction);
    axis.from.wall = span.from;
    axis.to.at_mm = span.to ? plane_along(folded, *span.to, direction) : rim_along(folded, direction);
    axis.to.wall = span.to;
    axis.is_parallel = !span.to || folded.are_parallel(span.from, *span.to);
    return axis;
}

Region framed(const Rectangle& frame) {
    return {{{{frame.left, frame.low}, {frame.right, frame.low}, {frame.right, frame.high}, {frame.left, frame.high}}}};
}

// Layers of the wall from the outermost to the innermost.
std::vector<WallLayer> layers_of_wall(const FoldedBlank& folded, const BoxEnd& end, const DrawnBox& box,
                                      std::size_t side, double inwards) {
    std::vector<WallLayer> layers = layers_at(folded, *end.wall, box[side], end.at_mm, inwards);
    const Region face = framed(face_frame(folded, *end.wall, box, side));
    const double caliper = folded.blank->caliper_mm;
    layers.erase(std::remove_if(layers.begin(), layers.end(),
                                [&](const WallLayer& layer) {
                                    return layer.cell != *end.wall &&
                                           common_area(layer.region, face).depth() <= caliper;
                                }),
                 layers.end());
    return in_turn(*folded.blank, std::move(layers));
}

void measure_layers(const FlatBlank& blank, std::vector<WallLayer> layers, BoxEnd& end) {
    end.innermost_in_mm = pushed_in_mm(layers, blank.caliper_mm);
    end.outermost_mm = outermost_depth(layers);
    for (const WallLayer& layer : layers) end.innermost_out_mm = std::max(end.innermost_out_mm, layer.depth_mm);
    end.thickness_mm = end.innermost_in_mm - end.outermost_mm + blank.caliper_mm;
    layers.erase(std::remove_if(layers.begin(), layers.end(),
                                [&](const WallLayer& layer) { return blank.cells[layer.cell].is_joined; }),
                 layers.end());
    end.thickness_less_tabs_mm = pushed_in_mm(layers, blank.caliper_mm) - outermost_depth(layers) + blank.caliper_mm;
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

std::vector<WallLayer> layers_at(const FoldedBlank& folded, std::size_t wall, const DrawnSide& side, double at_mm,
                                 double inwards) {
    const double caliper = folded.blank->caliper_mm;
    std::vector<WallLayer> layers;
    for (std::size_t i = 0; i < folded.placements.size(); ++i) {
        if (!folded.are_parallel(wall, i)) continue;
        const double depth = inwards * (plane_along(folded, i, side.direction) - at_mm);
        if (depth < -outer_reach_mm(caliper) || depth > layer_depth_calipers * caliper) continue;
        layers.push_back({i, depth, folded.seen_from(wall, i)});
    }
    return layers;
}

Rectangle face_frame(const FoldedBlank& folded, std::size_t wall, const DrawnBox& box, std::size_t side) {
    const DrawnSide &a = box[(side + 1) % 3], &b = box[(side + 2) % 3];
    const double half = folded.blank->caliper_mm / 2;
    const Placement& placement = folded.placements[wall];
    const Vec3 lowest = placement.unfolded((a.from_mm + half) * a.direction + (b.from_mm + half) * b.direction);
    const Vec3 highest = placement.unfolded((a.to_mm - half) * a.direction + (b.to_mm - half) * b.direction);
    return {std::min(lowest.x, highest.x), std::min(lowest.y, highest.y), std::max(lowest.x, highest.x),
            std::max(lowest.y, highest.y)};
}

bool are_square(const BoxAxes& axes) {
    for (std::size_t a = 0; a < axes.size(); ++a)
        for (std::size_t b = 0; b < a; ++b)
            if (axes[a] && axes[b] && std::abs(dot(axes[a]->direction, axes[b]->direction)) > square_enough)
                return false;
    return true;
}

std::optional<DrawnBox> drawn_box(const FoldedBlank& folded, const BoxAxes& axes) {
    const auto is_measured = [](const std::optional<BoxAxis>& axis) { return axis.has_value(); };
    if (std::count_if(axes.begin(), axes.end(), is_measured) < 2 || !are_square(axes)) return {};
    DrawnBox box = {};
    for (std::size_t side = 0; side < box.size(); ++side) {
        if (axes[side]) {
            box[side] = {axes[side]->direction, axes[side]->from.at_mm, axes[side]->to.at_mm};
            continue;
        }
        const Vec3 direction = cross(axes[(side + 1) % 3]->direction, axes[(side + 2) % 3]->direction);
        const std::array<double, 2> extent = extent_along(folded, direction);
        box[side] = {direction, extent[0], extent[1]};
    }
    return box;
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

BoxAxes box_axes(const FoldedBlank& folded) {
    BoxAxes axes;
    for (std::size_t side = 0; side < axes.size(); ++side)
        if (folded.blank->inside[side]) axes[side] = drawn_axis(folded, *folded.blank->inside[side]);
    const std::optional<DrawnBox> box = drawn_box(folded, axes);
    if (!box) return axes;
    for (std::size_t side = 0; side < axes.size(); ++side) {
        if (!axes[side]) continue;
        BoxEnd &from = axes[side]->from, &to = axes[side]->to;
        measure_layers(*folded.blank, layers_of_wall(folded, from, *box, side, 1), from);
        if (to.wall) measure_layers(*folded.blank, layers_of_wall(folded, to, *box, side, -1), to);
    }
    return axes;
}

double walls_mm(const BoxAxis& axis, double size_mm, double caliper_mm) {
    const double with_tabs = axis.from.thickness_mm + axis.to.thickness_mm;
    const double without = axis.from.thickness_less_tabs_mm + axis.to.thickness_less_tabs_mm;
    const double room = std::max(0.0, axis.inside(caliper_mm).pushed_out_mm - size_mm);
    return std::min(with_tabs, without + room);
}

}  // namespace flutebook::blanks
