// What is wrong with the folded box: its joints, its inside, what stands out of place, what is open.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "host/blanks/fold_faults.hpp"

namespace flutebook::blanks {

namespace {

constexpr double joint_reach_calipers = 2;
constexpr double joint_share = 0.9;
constexpr double size_slack_mm = 1;  // what rounding of allowances to half millimetres may leave
constexpr double cover_slack = 0.01;
constexpr const char* side_names[] = {"L", "B", "H"};
constexpr const char* face_names[] = {"left", "right", "front", "back", "bottom", "top"};

FoldingFault box_fault(const FlatBlank& blank, FoldingFault::Kind kind, std::vector<std::size_t> cells, double amount,
                       const std::string& text) {
    return {kind, blank.piece, {}, std::move(cells), amount, text};
}

std::vector<std::size_t> walls_of(const BoxAxis& axis) {
    std::vector<std::size_t> walls;
    for (const BoxEnd* end : {&axis.from, &axis.to})
        if (end->wall) walls.push_back(*end->wall);
    return walls;
}

std::string between_walls(const FlatBlank& blank, const BoxAxis& axis) {
    const std::string to = axis.to.wall ? blank.cells[*axis.to.wall].name : "the rim";
    return fmt::format("between {} and {}", blank.cells[*axis.from.wall].name, to);
}

void add_wrong_size(const FlatBlank& blank, const BoxAxis& axis, std::size_t side, SizeBounds bounds,
                    std::vector<FoldingFault>& faults) {
    const double size = blank.size_mm[side], caliper = blank.caliper_mm;
    const auto add = [&](double amount, const std::string& what) {
        faults.push_back(
            box_fault(blank, FoldingFault::Kind::size, walls_of(axis), amount,
                      fmt::format("inside {} {}: {}", side_names[side], between_walls(blank, axis), what)));
    };
    if (!axis.is_parallel) return add(size, "the two are not parallel");
    const InsideRange inside = axis.inside(caliper);
    const std::string span = fmt::format("{:.1f} mm, {:.1f} with all layers pushed in; asked for {:.1f}",
                                         inside.pushed_out_mm, inside.pushed_in_mm, size);
    const double excess = inside.pushed_out_mm - size;
    const double middle = (inside.pushed_in_mm + inside.pushed_out_mm) / 2 - size;
    const bool is_too_large =
        bounds == SizeBounds::library ? middle > caliper + size_slack_mm : excess > 3 * caliper + size_slack_mm;
    if (is_too_large) add(excess, fmt::format("{:.1f} mm too large: {}", excess, span));
    if (excess < -size_slack_mm) add(-excess, fmt::format("{:.1f} mm too small: {}", -excess, span));
}

std::vector<Vec3> part_below(const std::vector<Vec3>& corners, const Vec3& direction, double limit) {
    std::vector<Vec3> kept;
    for (std::size_t i = 0; i < corners.size(); ++i) {
        const Vec3 &a = corners[i], &b = corners[(i + 1) % corners.size()];
        const double a_over = dot(a, direction) - limit, b_over = dot(b, direction) - limit;
        if (a_over <= 0) kept.push_back(a);
        if ((a_over <= 0) != (b_over <= 0)) kept.push_back(a + a_over / (a_over - b_over) * (b - a));
    }
    return kept;
}

// Whether some of the cell lies within the drawn box, narrowed by `margin` on every side.
bool reaches_into(std::vector<Vec3> corners, const DrawnBox& box, double margin) {
    for (const DrawnSide& side : box) {
        corners = part_below(corners, side.direction, side.to_mm - margin);
        corners = part_below(corners, -1 * side.direction, -(side.from_mm + margin));
    }
    return corners.size() > 2;
}

// How deep the cell stands in the drawn box: the greatest margin at which some of it is left.
double depth_inside(const std::vector<Vec3>& corners, const DrawnBox& box) {
    double low = 0, high = box[0].to_mm - box[0].from_mm;
    for (const DrawnSide& side : box) high = std::min(high, (side.to_mm - side.from_mm) / 2);
    for (int halving = 0; halving < 40 && high - low > 1e-3; ++halving) {
        const double middle = (low + high) / 2;
        (reaches_into(corners, box, middle) ? low : high) = middle;
    }
    return low;
}

std::vector<Vec3> corners_of(const FoldedBlank& folded, std::size_t cell) {
    std::vector<Vec3> corners;
    for (const Point& corner : folded.blank->cells[cell].outline)
        corners.push_back(folded.placements[cell].placed(in_space(corner)));
    return corners;
}

void add_inner_stray(const FoldedBlank& folded, const DrawnBox& box, std::size_t cell,
                     std::vector<FoldingFault>& faults) {
    const FlatBlank& blank = *folded.blank;
    const std::vector<Vec3> corners = corners_of(folded, cell);
    const double margin = layer_depth_calipers * blank.caliper_mm;
    if (!reaches_into(corners, box, margin + 1e-6)) return;
    const double depth = depth_inside(corners, box);
    faults.push_back(
        box_fault(blank, FoldingFault::Kind::reach, {cell}, depth,
                  fmt::format("{} stands in the inside, {:.1f} mm from the walls", blank.cells[cell].name, depth)));
}

void add_outer_stray(const FoldedBlank& folded, const BoxAxes& axes, std::size_t cell,
                     std::vector<FoldingFault>& faults) {
    const FlatBlank& blank = *folded.blank;
    for (std::size_t side = 0; side < 3; ++side) {
        if (!axes[side]) continue;
        double out = 0;
        for (const Vec3& corner : corners_of(folded, cell)) {
            const double at = dot(corner, axes[side]->direction);
            out = std::max({out, axes[side]->from.at_mm - at, at - axes[side]->to.at_mm});
        }
        if (out <= outer_reach_mm(blank.caliper_mm)) continue;
        faults.push_back(box_fault(blank, FoldingFault::Kind::reach, {cell}, out,
                                   fmt::format("{} stands {:.1f} mm out of the box, along {}", blank.cells[cell].name,
                                               out, side_names[side])));
    }
}

// The share of a face that cells near it cover: at a rim those that would close it.
double covered_share(const FoldedBlank& folded, const DrawnBox& box, std::size_t side, std::size_t wall, double at_mm,
                     double inwards) {
    const Rectangle frame = face_frame(folded, wall, box, side);
    std::vector<Region> regions;
    for (WallLayer& layer : layers_at(folded, wall, box[side], at_mm, inwards))
        regions.push_back(std::move(layer.region));
    const double area = (frame.right - frame.left) * (frame.high - frame.low);
    return area > 0 ? covered_area(regions, frame) / area : 0;
}

void add_wrong_cover(const FoldedBlank& folded, const DrawnBox& box, std::size_t face, const BoxAxis& axis,
                     std::vector<FoldingFault>& faults) {
    const FlatBlank& blank = *folded.blank;
    const std::size_t side = face / 2;
    const BoxEnd& end = face % 2 == 0 ? axis.from : axis.to;
    const double share = covered_share(folded, box, side, *axis.from.wall, end.at_mm, face % 2 == 0 ? 1 : -1);
    const DrawnSide &a = box[(side + 1) % 3], &b = box[(side + 2) % 3];
    const double slack =
        cover_slack + blank.caliper_mm / (a.to_mm - a.from_mm) + blank.caliper_mm / (b.to_mm - b.from_mm);
    const double excess = share - blank.cover[face];
    if (std::abs(excess) <= slack) return;
    std::vector<std::size_t> cells;
    if (end.wall) cells.push_back(*end.wall);
    faults.push_back(box_fault(blank, FoldingFault::Kind::cover, cells, excess,
                               fmt::format("{} is covered to {:.1f} %, should be {:.1f} %", face_names[face],
                                           100 * share, 100 * blank.cover[face])));
}

Vec3 middle_of_box(const DrawnBox& box) {
    Vec3 middle = {0, 0, 0};
    for (const DrawnSide& side : box) middle = middle + (side.from_mm + side.to_mm) / 2 * side.direction;
    return middle;
}

}  // namespace

void add_open_joints(const FoldedBlank& folded, std::vector<FoldingFault>& faults) {
    const FlatBlank& blank = *folded.blank;
    for (const box_styles::Join& join : blank.joins) {
        const std::string names = fmt::format("{} on {}", blank.cells[join.cell].name, blank.cells[join.partner].name);
        const auto add = [&](double amount, const std::string& what) {
            faults.push_back(box_fault(blank, FoldingFault::Kind::joint, {join.cell, join.partner}, amount,
                                       fmt::format("joint {}: {}", names, what)));
        };
        if (!folded.are_parallel(join.cell, join.partner)) {
            add(0, "the two are not parallel");
            continue;
        }
        const Vec3 corner = folded.placements[join.cell].placed(in_space(blank.cells[join.cell].outline[0]));
        const double apart = std::abs(folded.placements[join.partner].unfolded(corner).z);
        const Region& region = folded.regions[join.cell];
        const double area = area_of(region);
        const double share = area > 0 ? common_area(region, folded.seen_from(join.cell, join.partner)).area / area : 0;
        if (apart > joint_reach_calipers * blank.caliper_mm)
            add(apart, fmt::format("{:.1f} mm apart", apart));
        else if (share < joint_share)
            add(share, fmt::format("only {:.0f} % lies on its partner", 100 * share));
    }
}

void add_wrong_sizes(const FoldedBlank& folded, const BoxAxes& axes, SizeBounds bounds,
                     std::vector<FoldingFault>& faults) {
    const FlatBlank& blank = *folded.blank;
    for (std::size_t side = 0; side < 3; ++side)
        if (axes[side]) add_wrong_size(blank, *axes[side], side, bounds, faults);
    if (!are_square(axes))
        faults.push_back(
            box_fault(blank, FoldingFault::Kind::size, {}, 0, "inside: L, B and H are not square to one another"));
}

void add_strays(const FoldedBlank& folded, const BoxAxes& axes, std::vector<FoldingFault>& faults) {
    const std::optional<DrawnBox> box = drawn_box(folded, axes);
    if (!box) return;
    for (std::size_t cell = 0; cell < folded.placements.size(); ++cell) {
        add_inner_stray(folded, *box, cell, faults);
        add_outer_stray(folded, axes, cell, faults);
    }
}

void add_wrong_covers(const FoldedBlank& folded, const BoxAxes& axes, std::vector<FoldingFault>& faults) {
    const std::optional<DrawnBox> box = drawn_box(folded, axes);
    if (!box) return;
    for (std::size_t face = 0; face < 6; ++face)
        if (axes[face / 2]) add_wrong_cover(folded, *box, face, *axes[face / 2], faults);
}

void add_wrong_side(const FoldedBlank& folded, const BoxAxes& axes, std::vector<FoldingFault>& faults) {
    const std::optional<DrawnBox> box = drawn_box(folded, axes);
    if (!box) return;
    const FlatBlank& blank = *folded.blank;
    const Vec3 middle = middle_of_box(*box);
    double inwards = 0, outwards = 0;  // mm2 of board whose inside is turned so; of a rim that is rolled over, some is
    for (std::size_t cell = 0; cell < blank.cells.size(); ++cell) {
        const Placement& placement = folded.placements[cell];
        const Vec3 to_middle = middle - placement.placed(in_space(middle_of(blank.cells[cell].outline)));
        const double towards = dot(placement.z, to_middle);
        if (towards > blank.caliper_mm) inwards += area_of(folded.regions[cell]);
        if (towards < -blank.caliper_mm) outwards += area_of(folded.regions[cell]);
    }
    if (outwards <= inwards) return;
    faults.push_back(box_fault(blank, FoldingFault::Kind::side, {}, outwards / (inwards + outwards),
                               fmt::format("the box is turned inside out: {:.0f} % of its board has the drawn side "
                                           "outside; the drawing is seen from the inside, and what folds by 90 rises",
                                           100 * outwards / (inwards + outwards))));
}

}  // namespace flutebook::blanks
