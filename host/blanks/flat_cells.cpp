// A cell is drawn in its own u and v, along its crease and away from it, then laid where its crease lies.
#include "host/blanks/flat_cells.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

#include "host/base/quoted_text.hpp"
#include "host/blanks/flat_regions.hpp"
#include "host/box_styles/style_map.hpp"
#include "host/box_styles/style_sums.hpp"

namespace flutebook::blanks {

using box_styles::StyleBorder;
using box_styles::StyleCell;
using box_styles::StylePiece;

namespace {

struct Stretch {
    double low, high;
    [[nodiscard]] double length() const { return high - low; }
};

// What the grid leaves a cell, half a slot off on each side that has one.
struct GridBox {
    Stretch x, y;
};

enum class HangingSide { left, right, up, down };

bool is_level(HangingSide side) {
    return side == HangingSide::up || side == HangingSide::down;
}

// Where u and v lie on the blank.
struct CellFrame {
    Point origin, u, v;
    double width_mm, depth_mm;

    [[nodiscard]] Point at(double along, double away) const {
        return {origin.x + along * u.x + away * v.x, origin.y + along * u.y + away * v.y};
    }
};

// An edge of the parent that a child hangs on: its line, and where on the line.
struct HangingEdge {
    double line;
    Stretch span;
};

class CellPlacer {
public:
    CellPlacer(const StylePiece& piece, StyleValues& values) : piece_(piece), values_(values) {}

    std::vector<FlatCell> place() {
        columns_ = lines(piece_.along);
        rows_ = lines(piece_.across);
        find_boxes();
        for (std::size_t i = 0; i < piece_.cells.size(); ++i) place_cell(i);
        for (const auto& join : piece_.joins) cells_[join.cell].is_joined = true;
        return std::move(cells_);
    }

private:
    // Of columns or rows: 0, then where each ends.
    std::vector<double> lines(const std::vector<box_styles::Sum>& sums) const {
        std::vector<double> result{0};
        for (const auto& sum : sums) result.push_back(result.back() + values_.positive_length(sum));
        return result;
    }

    void find_boxes() {
        for (const auto& cell : piece_.cells)
            boxes_.push_back({{columns_[cell.first_column], columns_[cell.last_column + 1]},
                              {rows_[cell.first_row], rows_[cell.last_row + 1]}});
        const bool has_slots = std::any_of(piece_.borders.begin(), piece_.borders.end(), [](const StyleBorder& border) {
            return border.kind == StyleBorder::Kind::slot;
        });
        if (!has_slots) return;
        const box_styles::Sum sum = piece_.slot.value_or(box_styles::Sum{"slot", piece_.place});
        const double slot_mm = values_.length(sum);
        for (const auto& border : piece_.borders) {
            if (border.kind != StyleBorder::Kind::slot) continue;
            boxes_[border.first].x.high -= slot_mm / 2;
            boxes_[border.second].x.low += slot_mm / 2;
        }
        for (std::size_t i = 0; i < boxes_.size(); ++i)
            if (slot_mm < 0 || boxes_[i].x.length() < box_styles::shortest_length_mm)
                refuse(piece_.cells[i],
                       fmt::format("no flap is left between two slots: found slots of {} mm in a width of {} mm; ask "
                                   "for a larger box, or lower {}",
                                   slot_mm,
                                   columns_[piece_.cells[i].last_column + 1] - columns_[piece_.cells[i].first_column],
                                   piece_.slot ? "the style's slot" : values_.allowance_words("slot")));
    }

    [[noreturn]] void refuse(const StyleCell& cell, const std::string& what) const {
        values_.refuse(cell.place, fmt::format("cell {}: {}", base::shown(cell.name), what));
    }

    void place_cell(std::size_t index) {
        const StyleCell& cell = piece_.cells[index];
        FlatCell flat{};
        flat.name = cell.name;
        flat.parent = cell.parent;
        flat.angle_deg = cell.angle_deg;
        flat.is_plain = cell.is_plain;
        const CellFrame frame = cell.parent ? frame_on(index, flat.hinge) : frame_of_root(boxes_[index]);
        values_.set("w", frame.width_mm);
        values_.set("d", frame.depth_mm);
        flat.outline = outline(cell, frame);
        cut_holes(cell, frame, flat);
        cells_.push_back(std::move(flat));
    }

    static CellFrame frame_of_root(const GridBox& box) {
        return {{box.x.low, box.y.high}, {1, 0}, {0, -1}, box.x.length(), box.y.length()};
    }

    HangingSide side_of(const StyleCell& cell, const StyleCell& parent) const {
        if (cell.first_column > parent.last_column) return HangingSide::right;
        if (cell.last_column < parent.first_column) return HangingSide::left;
        return cell.first_row > parent.last_row ? HangingSide::down : HangingSide::up;
    }

    CellFrame frame_on(std::size_t index, Segment& hinge) {
        const StyleCell& cell = piece_.cells[index];
        const HangingSide side = side_of(cell, piece_.cells[*cell.parent]);
        const bool level = is_level(side);
        const GridBox& box = boxes_[index];
        const auto edge = hanging_edge(cells_[*cell.parent].outline, side, level ? box.x : box.y);
        if (!edge)
            refuse(cell, fmt::format("hangs on no straight edge of {}: expected one that lies along the crease",
                                     base::shown(cells_[*cell.parent].name)));
        const double first = side_sum(cell.inset[0]), last = side_sum(cell.inset[1]);
        // The first side is the left or the bottom one.
        const Stretch near = level ? Stretch{edge->span.low + first, edge->span.high - last}
                                   : Stretch{edge->span.low + last, edge->span.high - first};
        if (near.length() < box_styles::shortest_length_mm)
            refuse(cell, fmt::format("its insets leave nothing of it: found {} and {} mm on an edge of {} mm", first,
                                     last, edge->span.length()));
        hinge = hinge_on(*edge, near, level);
        CellFrame frame = frame_at(side, edge->line, near);
        values_.set("w", frame.width_mm);
        frame.depth_mm = cell.depth ? values_.positive_length(*cell.depth) : (level ? box.y : box.x).length();
        return frame;
    }

    double side_sum(const std::optional<box_styles::Sum>& sum) const { return sum ? values_.length(*sum) : 0; }

    // Where inset is below 0, the cell stands out beside its crease.
    Segment hinge_on(const HangingEdge& edge, const Stretch& near, bool level) const {
        const Stretch span{std::max(edge.span.low, near.low), std::min(edge.span.high, near.high)};
        if (level) return {{span.low, edge.line}, {span.high, edge.line}};
        return {{edge.line, span.high}, {edge.line, span.low}};
    }

    static CellFrame frame_at(HangingSide side, double line, const Stretch& near) {
        switch (side) {
            case HangingSide::down:
                return {{near.low, line}, {1, 0}, {0, 1}, near.length(), 0};
            case HangingSide::up:
                return {{near.low, line}, {1, 0}, {0, -1}, near.length(), 0};
            case HangingSide::right:
                return {{line, near.high}, {0, -1}, {1, 0}, near.length(), 0};
            case HangingSide::left:
                break;
        }
        return {{line, near.high}, {0, -1}, {-1, 0}, near.length(), 0};
    }

    // The edge that faces a side and shares most with what the grid gives the child.
    static std::optional<HangingEdge> hanging_edge(const Polygon& outline, HangingSide side, const Stretch& grid) {
        const double turn = signed_double_area(outline) > 0 ? 1 : -1;
        const bool level = is_level(side);
        const double outward = side == HangingSide::right || side == HangingSide::down ? 1 : -1;
        std::optional<HangingEdge> best;
        for (std::size_t i = 0; i < outline.size(); ++i) {
            const Point& from = outline[i];
            const Point& to = outline[(i + 1) % outline.size()];
            const double away = level ? to.y - from.y : to.x - from.x;
            // Inside lies to one hand of every edge, by the way the corners turn.
            const double faces = level ? -(to.x - from.x) : to.y - from.y;
            if (std::abs(away) > 1e-9 || faces * turn * outward <= 0) continue;
            const Stretch edge = level ? Stretch{std::min(from.x, to.x), std::max(from.x, to.x)}
                                       : Stretch{std::min(from.y, to.y), std::max(from.y, to.y)};
            const Stretch span{std::max(edge.low, grid.low), std::min(edge.high, grid.high)};
            if (span.length() > 1e-6 && (!best || span.length() > best->span.length()))
                best = HangingEdge{level ? from.y : from.x, span};
        }
        return best;
    }

    Polygon outline(const StyleCell& cell, const CellFrame& frame) const {
        if (!cell.shape.empty()) {
            const Polygon shape = corners(cell.shape, frame);
            if (!is_simple(shape))
                refuse(cell, "its outline crosses itself or holds no area: expected corners in turn");
            return shape;
        }
        const double w = frame.width_mm, d = frame.depth_mm;
        const double first = side_sum(cell.taper[0]), last = side_sum(cell.taper[1]);
        if (!(w - first - last > 0))
            refuse(cell,
                   fmt::format("its taper leaves nothing at the far end: found {} and {} mm of {} mm", first, last, w));
        return {frame.at(0, 0), frame.at(w, 0), frame.at(w - last, d), frame.at(first, d)};
    }

    Polygon corners(const std::vector<std::array<box_styles::Sum, 2>>& sums, const CellFrame& frame) const {
        Polygon result;
        for (const auto& corner : sums)
            result.push_back(frame.at(values_.length(corner[0]), values_.length(corner[1])));
        return result;
    }

    void cut_holes(const StyleCell& cell, const CellFrame& frame, FlatCell& flat) {
        constexpr double most_in_a_cell = box_styles::most_cut_outs_of_cell;
        double cut = 0;
        for (const auto& hole : cell.holes) {
            const double count = hole.count ? values_.count(*hole.count, most_in_a_cell) : 1;
            cut += count;
            if (cut > most_in_a_cell)
                refuse(cell, fmt::format("too many cut-outs: found {}, expected at most {}", cut, most_in_a_cell));
            add_cut_outs(cell, count);
            for (double i = 1; i <= count; ++i) {
                values_.set("i", i);
                if (const char* fault = cut_from(flat, hole_polygon(hole, frame)))
                    refuse(cell, fmt::format("a cut-out {}: found it as number {}; keep it within the cell", fault, i));
            }
        }
    }

    void add_cut_outs(const StyleCell& cell, double count) {
        constexpr double most_in_a_blank = box_styles::most_cut_outs_of_blank;
        cut_outs_ += count;
        if (cut_outs_ > most_in_a_blank)
            refuse(cell, fmt::format("too many cut-outs in one blank: found {} up to this cell, expected at most {}",
                                     cut_outs_, most_in_a_blank));
    }

    Polygon hole_polygon(const box_styles::StyleHole& hole, const CellFrame& frame) const {
        if (!hole.is_rectangle) return corners(hole.corners, frame);
        const double u = values_.length(hole.corners[0][0]), v = values_.length(hole.corners[0][1]);
        const double a = values_.positive_length(hole.corners[1][0]), b = values_.positive_length(hole.corners[1][1]);
        return {frame.at(u, v), frame.at(u + a, v), frame.at(u + a, v + b), frame.at(u, v + b)};
    }

    const StylePiece& piece_;
    StyleValues& values_;
    std::vector<double> columns_, rows_;
    std::vector<GridBox> boxes_;
    std::vector<FlatCell> cells_;
    double cut_outs_ = 0;  // of all cells so far
};

}  // namespace

double signed_double_area(const Polygon& polygon) {
    double sum = 0;
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        const Point& from = polygon[i];
        const Point& to = polygon[(i + 1) % polygon.size()];
        sum += from.x * to.y - to.x * from.y;
    }
    return sum;
}

std::vector<FlatCell> place_cells(const StylePiece& piece, StyleValues& values) {
    return CellPlacer(piece, values).place();
}

}  // namespace flutebook::blanks
