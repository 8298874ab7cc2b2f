// A style is drawn piece by piece: its names get their values, its cells their places, then what the cells leave is
// checked and the blank is laid so that it begins at (0, 0).
#include "host/blanks/flat.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "host/base/quoted_text.hpp"
#include "host/blanks/flat_borders.hpp"
#include "host/blanks/flat_cells.hpp"
#include "host/blanks/flat_regions.hpp"
#include "host/blanks/flat_values.hpp"

namespace flutebook::blanks {

using box_styles::StyleBorder;
using box_styles::StylePiece;

namespace {

template <typename Change>
void change_points(FlatBlank& blank, const Change& change) {
    const auto change_segment = [&](Segment& segment) { segment = {change(segment.from), change(segment.to)}; };
    for (FlatCell& cell : blank.cells) {
        for (Point& point : cell.outline) point = change(point);
        for (Polygon& hole : cell.holes)
            for (Point& point : hole) point = change(point);
        if (cell.parent) change_segment(cell.hinge);
    }
    for (Segment& crease : blank.creases) change_segment(crease);
    for (Segment& slot : blank.slots) change_segment(slot);
}

// Along the middle of what a slot takes from two cells.
Segment slot_between(const FlatCell& left, const FlatCell& right) {
    const CellBounds a = bounds_of(left.outline), b = bounds_of(right.outline);
    const double x = (a.high.x + b.low.x) / 2;
    return {{x, std::max(a.low.y, b.low.y)}, {x, std::min(a.high.y, b.high.y)}};
}

void add_borders(const StylePiece& piece, FlatBlank& blank) {
    for (const StyleBorder& border : piece.borders) {
        const FlatCell& first = blank.cells[border.first];
        const FlatCell& second = blank.cells[border.second];
        if (border.kind == StyleBorder::Kind::slot) blank.slots.push_back(slot_between(first, second));
        if (border.kind != StyleBorder::Kind::crease) continue;
        const bool second_hangs = second.parent == border.first;
        for (const Segment& part : second_hangs ? crease_of(second, first) : crease_of(first, second))
            blank.creases.push_back(part);
    }
}

void lay_at_origin(FlatBlank& blank) {
    CellBounds extent = bounds_of(blank.cells.front().outline);
    for (const FlatCell& cell : blank.cells) {
        const CellBounds bounds = bounds_of(cell.outline);
        extent.low = {std::min(extent.low.x, bounds.low.x), std::min(extent.low.y, bounds.low.y)};
        extent.high = {std::max(extent.high.x, bounds.high.x), std::max(extent.high.y, bounds.high.y)};
    }
    blank.length_mm = extent.high.x - extent.low.x;
    blank.width_mm = extent.high.y - extent.low.y;
    if (extent.low.x == 0 && extent.low.y == 0) return;
    change_points(blank, [&](const Point& point) -> Point { return {point.x - extent.low.x, point.y - extent.low.y}; });
}

// A quarter turn, so that the blank is seen from the same side as before.
void turn(FlatBlank& blank) {
    const double length_mm = blank.length_mm;
    change_points(blank, [&](const Point& point) -> Point { return {point.y, length_mm - point.x}; });
    std::swap(blank.length_mm, blank.width_mm);
}

void check_apart(const FlatBlank& blank, const StylePiece& piece, const StyleValues& values) {
    for (std::size_t i = 0; i < blank.cells.size(); ++i)
        for (std::size_t j = 0; j < i; ++j)
            if (const double area = shared_area(blank.cells[i], blank.cells[j]); area > 0)
                values.refuse(piece.cells[i].place,
                              fmt::format("cells on one another on the blank: found {} on {} by {:.1f} mm2; ask for "
                                          "another size, or let them reach less far",
                                          base::shown(blank.cells[i].name), base::shown(blank.cells[j].name), area));
}

class PieceDrawing {
public:
    PieceDrawing(const StylePiece& piece, const StyleSize& size, StyleValues values)
        : piece_(piece), size_(size), values_(std::move(values)) {
        values_.add(piece.let);
    }

    FlatBlank draw() {
        FlatBlank blank;
        blank.piece = piece_.name;
        blank.caliper_mm = size_.caliper_mm;
        blank.cells = place_cells(piece_, values_);
        check_apart(blank, piece_, values_);
        add_borders(piece_, blank);
        lay_at_origin(blank);
        if (size_.is_turned) turn(blank);
        add_fold(blank);
        return blank;
    }

private:
    void add_fold(FlatBlank& blank) const {
        constexpr double most_blanks = 1000;
        blank.count = piece_.count ? values_.count(*piece_.count, most_blanks) : 1;
        if (blank.count < 1) values_.refuse(piece_.count->place, "no blank is left: found a count of 0");
        blank.fold = piece_.fold;
        blank.joins = piece_.joins;
        blank.inside = piece_.inside;
        blank.over = piece_.over;
        for (std::size_t i = 0; i < 3; ++i) blank.size_mm[i] = values_.number(piece_.size[i]);
        for (std::size_t i = 0; i < 6; ++i) blank.cover[i] = values_.number(piece_.cover[i]);
        for (std::size_t i = 0; i < 3; ++i)
            if (piece_.walls[i]) blank.walls_mm[i] = values_.length(*piece_.walls[i]);
    }

    const StylePiece& piece_;
    const StyleSize& size_;
    StyleValues values_;
};

}  // namespace

std::vector<FlatBlank> draw_flat(const box_styles::Style& style, const StyleSize& size) {
    const StyleValues values(style, size);
    if (!style.requirements.empty()) {
        StyleValues whole = values;
        whole.add(style.pieces.front().let);
        whole.check_requirements();
    }
    std::vector<FlatBlank> blanks;
    for (const StylePiece& piece : style.pieces) blanks.push_back(PieceDrawing(piece, size, values).draw());
    return blanks;
}

}  // namespace flutebook::blanks
