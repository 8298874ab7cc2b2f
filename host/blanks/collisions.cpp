// Cells that meet while the blank is folded: each pair is looked at after every step that moves one against the other.
#include <fmt/format.h>

#include <algorithm>

#include "host/blanks/fold_faults.hpp"

namespace flutebook::blanks {

namespace {

constexpr double edge_calipers = 1.6;   // two cells may reach this far through one another at their edges
constexpr double touch_calipers = 0.9;  // parallel cells nearer than this lie on one another
constexpr int points_a_line = 12;

struct Meeting {
    double depth_mm;
    Point at;  // on the flat blank, in the first cell's frame
};

// Which of two cells a step moves against the other: a cell moves with all that it hangs on, but what both hang on
// moves neither.
struct StepMovement {
    std::ptrdiff_t first, second;  // how many creases turn between each cell and what both hang on

    bool moves_any() const { return first + second > 0; }
    bool moves_both() const { return first > 0 && second > 0; }
};

bool folds_in(const FlatBlank& blank, std::size_t step, std::size_t cell) {
    const std::vector<std::size_t>& cells = blank.fold[step];
    return std::find(cells.begin(), cells.end(), cell) != cells.end();
}

std::vector<std::size_t> with_ancestors(const FlatBlank& blank, std::size_t cell) {
    std::vector<std::size_t> line = {cell};
    while (blank.cells[line.back()].parent) line.push_back(*blank.cells[line.back()].parent);
    return line;
}

StepMovement movement(const FlatBlank& blank, std::size_t step, std::size_t first, std::size_t second) {
    std::vector<std::size_t> a = with_ancestors(blank, first), b = with_ancestors(blank, second);
    while (!a.empty() && !b.empty() && a.back() == b.back()) {
        a.pop_back();
        b.pop_back();
    }
    const auto moves = [&](std::size_t cell) { return folds_in(blank, step, cell); };
    return {std::count_if(a.begin(), a.end(), moves), std::count_if(b.begin(), b.end(), moves)};
}

bool are_joined(const FlatBlank& blank, std::size_t a, std::size_t b) {
    return std::any_of(blank.joins.begin(), blank.joins.end(), [&](const box_styles::Join& join) {
        return (join.cell == a && join.partner == b) || (join.cell == b && join.partner == a);
    });
}

double offset_mm(const FoldedBlank& folded, std::size_t from, std::size_t to) {
    const Vec3 corner = in_space(folded.blank->cells[to].outline[0]);
    return folded.placements[from].unfolded(folded.placements[to].placed(corner)).z;
}

// How far two parallel cells at one height reach over one another; nothing where they do not.
std::optional<Meeting> landing(const FoldedBlank& folded, std::size_t first, std::size_t second) {
    const double caliper = folded.blank->caliper_mm;
    if (std::abs(offset_mm(folded, first, second)) > touch_calipers * caliper) return {};
    const CommonArea common = common_area(folded.regions[first], folded.seen_from(first, second));
    if (common.depth() <= std::max(caliper, 1.0)) return {};
    return Meeting{common.depth(),
                   {(common.extent.left + common.extent.right) / 2, (common.extent.low + common.extent.high) / 2}};
}

// Places along a line in space, by their distance from its base.
struct CutLine {
    Vec3 base, direction;

    Vec3 at(double along) const { return base + along * direction; }
};

// Where the borders of `cell` cross the plane of `other`, along the direction of `line`; sorted.
std::vector<double> plane_crossings(const FoldedBlank& folded, std::size_t cell, std::size_t other,
                                    const Vec3& direction) {
    std::vector<double> crossings;
    for (const Polygon& ring : folded.regions[cell].rings)
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const Point &a = ring[i], &b = ring[(i + 1) % ring.size()];
            const Vec3 from = folded.placements[cell].placed({a.x, a.y, 0});
            const Vec3 to = folded.placements[cell].placed({b.x, b.y, 0});
            const double from_height = folded.placements[other].unfolded(from).z;
            const double to_height = folded.placements[other].unfolded(to).z;
            if ((from_height <= 0) == (to_height <= 0)) continue;
            crossings.push_back(dot(from + from_height / (from_height - to_height) * (to - from), direction));
        }
    std::sort(crossings.begin(), crossings.end());
    return crossings;
}

// The line in which the planes of two cells meet.
CutLine cut_line(const FoldedBlank& folded, std::size_t first, std::size_t second) {
    const Placement &a = folded.placements[first], &b = folded.placements[second];
    const Vec3 across = cross(a.z, b.z);
    const Vec3 direction = 1 / length(across) * across;
    const Vec3 in_first = cross(direction, a.z);  // within the first plane, square to the line
    const double step = dot(b.origin - a.origin, b.z) / dot(in_first, b.z);
    const Vec3 point = a.origin + step * in_first;
    return {point - dot(point, direction) * direction, direction};
}

Point flat_point(const Placement& placement, const Vec3& point) {
    const Vec3 unfolded = placement.unfolded(point);
    return {unfolded.x, unfolded.y};
}

// Where two cells that are not parallel pass deepest through one another.
std::optional<Meeting> cutting(const FoldedBlank& folded, std::size_t first, std::size_t second) {
    const CutLine line = cut_line(folded, first, second);
    const std::vector<double> a = plane_crossings(folded, first, second, line.direction);
    const std::vector<double> b = plane_crossings(folded, second, first, line.direction);
    Meeting deepest = {0, {0, 0}};
    for (std::size_t i = 0; i + 1 < a.size(); i += 2)
        for (std::size_t k = 0; k + 1 < b.size(); k += 2) {
            const double from = std::max(a[i], b[k]), to = std::min(a[i + 1], b[k + 1]);
            if (from >= to) continue;
            for (int point = 0; point < points_a_line; ++point) {
                const Vec3 at = line.at(from + (to - from) * (point + 0.5) / points_a_line);
                const Point in_first = flat_point(folded.placements[first], at);
                const double depth =
                    std::min(depth_within(folded.regions[first], in_first),
                             depth_within(folded.regions[second], flat_point(folded.placements[second], at)));
                if (depth > deepest.depth_mm) deepest = {depth, in_first};
            }
        }
    if (deepest.depth_mm <= edge_calipers * folded.blank->caliper_mm) return {};
    return deepest;
}

// Whether a cell that turns about a crease in its own plane would have had to pass through the other to come to lie
// where it is drawn.
std::optional<Meeting> passing(const FoldedBlank& folded, std::size_t mover, std::size_t other) {
    const FlatBlank& blank = *folded.blank;
    const double behind = -offset_mm(folded, mover, other) * (blank.cells[mover].angle_deg < 0 ? -1 : 1);
    if (behind <= edge_calipers * blank.caliper_mm || behind > outer_reach_mm(blank.caliper_mm)) return {};
    const CommonArea common = common_area(folded.regions[mover], folded.seen_from(mover, other));
    if (common.depth() <= edge_calipers * blank.caliper_mm) return {};
    return Meeting{behind,
                   {(common.extent.left + common.extent.right) / 2, (common.extent.low + common.extent.high) / 2}};
}

class StepCheck {
public:
    StepCheck(const FlatBlank& blank, std::size_t step)
        : blank_(blank), step_(step), folded_(folded(blank, static_cast<double>(step + 1))) {}

    void add_faults(std::vector<FoldingFault>& faults) const {
        for (std::size_t second = 1; second < blank_.cells.size(); ++second)
            for (std::size_t first = 0; first < second; ++first) look_at(first, second, faults);
    }

private:
    void look_at(std::size_t first, std::size_t second, std::vector<FoldingFault>& faults) const {
        const StepMovement moved = movement(blank_, step_, first, second);
        if (!moved.moves_any()) return;
        if (!folded_.are_parallel(first, second)) {
            if (blank_.cells[second].parent == first || blank_.cells[first].parent == second) return;
            if (const auto met = cutting(folded_, first, second)) add_cutting(first, second, *met, faults);
            return;
        }
        if (are_joined(blank_, first, second) || is_open_again(first, second)) return;
        const bool are_named = folds_in(blank_, step_, first) && folds_in(blank_, step_, second);
        if (are_named || moved.moves_both()) {
            if (const auto met = landing(folded_, first, second)) add_landing(first, second, *met, faults);
        } else if (moved.first + moved.second == 1) {
            look_at_passing(moved.first == 1 ? first : second, moved.first == 1 ? second : first, faults);
        }
    }

    // A later step parts them again: what they do now is no end of theirs.
    bool is_open_again(std::size_t first, std::size_t second) const {
        for (std::size_t later = step_ + 1; later < blank_.fold.size(); ++later)
            if (movement(blank_, later, first, second).moves_any()) return true;
        return false;
    }

    void look_at_passing(std::size_t mover, std::size_t other, std::vector<FoldingFault>& faults) const {
        if (!folds_in(blank_, step_, mover)) return;
        if (const auto met = passing(folded_, mover, other)) add_cutting(mover, other, *met, faults);
    }

    void add_landing(std::size_t first, std::size_t second, const Meeting& met,
                     std::vector<FoldingFault>& faults) const {
        add(FoldingFault::Kind::landing, first, second, met,
            fmt::format("{} and {} land on one another, {:.1f} mm deep", blank_.cells[first].name,
                        blank_.cells[second].name, met.depth_mm),
            faults);
    }

    void add_cutting(std::size_t first, std::size_t second, const Meeting& met,
                     std::vector<FoldingFault>& faults) const {
        add(FoldingFault::Kind::cutting, first, second, met,
            fmt::format("{} and {} pass through one another, {:.1f} mm from their edges", blank_.cells[first].name,
                        blank_.cells[second].name, met.depth_mm),
            faults);
    }

    void add(FoldingFault::Kind kind, std::size_t first, std::size_t second, const Meeting& met,
             const std::string& what, std::vector<FoldingFault>& faults) const {
        faults.push_back(
            {kind,
             blank_.piece,
             step_,
             {first, second},
             met.depth_mm,
             fmt::format("step {}: {}, at {:.0f}, {:.0f} mm of the blank", step_ + 1, what, met.at.x, -met.at.y)});
    }

    const FlatBlank& blank_;
    std::size_t step_;
    FoldedBlank folded_;
};

}  // namespace

void add_collisions(const FlatBlank& blank, std::vector<FoldingFault>& faults) {
    for (std::size_t step = 0; step < blank.fold.size(); ++step) StepCheck(blank, step).add_faults(faults);
}

}  // namespace flutebook::blanks
