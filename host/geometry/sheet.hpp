// Boxes on a sheet: how many a route can hold in a row, and what the sheet then measures.
#pragma once

#include "host/blanks/blank.hpp"
#include "host/geometry/route.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::geometry {

/// Two lengths less than this apart are one: no knife cuts to a nanometre, and sums of decimals are wrong by less.
constexpr double same_length_mm = 1e-6;

/// Whether a length keeps to a machine's limits.
[[nodiscard]] inline bool is_within(double length_mm, const fields::Span& limits_mm) {
    return length_mm >= limits_mm.low - same_length_mm && length_mm <= limits_mm.high + same_length_mm;
}

/// Boxes in a row on a sheet: `between` from one to the next, `edge` at either end.
struct BoxRow {
    double box_mm, between_mm, edge_mm;

    [[nodiscard]] double length_mm(double boxes) const {
        return boxes * box_mm + (boxes - 1) * between_mm + 2 * edge_mm;
    }
};

/// From `first` to `last` boxes in a row, whole numbers; none where first > last.
struct Boxes {
    double first, last;

    [[nodiscard]] bool none() const { return first > last; }
    [[nodiscard]] bool holds(double boxes) const { return boxes >= first && boxes <= last; }
};

/// Those of `boxes` whose row keeps to the limits. A longer row holds more boxes, so they have no gap.
[[nodiscard]] Boxes narrowed(Boxes boxes, const BoxRow& row, const fields::Span& limits_mm);

/// How a route lays boxes on a sheet. Where no machine parts blanks from it the sheet is the blank. A folder-gluer, a
/// stitcher and a hand station make one box a sheet, so what parts blanks behind one holds one box as well.
struct SheetRule {
    BoxRow along, across;  // along the chop, across the web
    double ups_max;

    /// No sheet holds more in a row; a machine that allows more would hold blanks too small to handle.
    static constexpr double most_in_a_row = 10'000;
    /// Before any limit of length.
    [[nodiscard]] Boxes allowed() const { return {1, ups_max < most_in_a_row ? ups_max : most_in_a_row}; }
};

/// The machine that makes one box a sheet and stands ahead of the one that parts them, if one does; null otherwise.
[[nodiscard]] const plant::Converter* one_up_before_parting(const Route& route);

[[nodiscard]] SheetRule sheet_rule(const blanks::Blank& blank, const Route& route);

/// Whether every machine after the parting step takes the blank.
[[nodiscard]] bool takes_blank(const Route& route, const blanks::Blank& blank);

}  // namespace flutebook::geometry
