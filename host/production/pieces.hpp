// The pieces of a run on a converter, and where the board of a run went, by area, on a converter and on the corrugator:
// what documents post and what an order's cost is worked out from.
//
// Pieces are sheets up to and including the step where blanks part from the sheet, blanks or boxes after it.
#pragma once

#include <flutebook/run.hpp>

#include <cstddef>

#include "host/orders/order_record.hpp"
#include "host/production/row.hpp"

namespace flutebook::production {

/// A step of an order's route, and what its pieces are.
struct RouteStep {
    std::size_t number;
    bool parts;    // blanks part from the sheet here
    bool is_last;  // what leaves is finished
    double piece_m2;
};

/// `number` is one of the route's: 1 .. K.
[[nodiscard]] RouteStep route_step(const orders::OrderRecord& order, std::size_t number);

/// The pieces of a row. `good` went through the machine unharmed, and `holds` boxes.
struct Pieces {
    double fed, setup, rejected, good;
    double holds;
    double boxes;  // that count; only at the last step
};

/// Of a converter's row. What cannot be is not objected to.
[[nodiscard]] Pieces pieces_of(const DocumentRow& row, const orders::OrderRecord& order, const RouteStep& step);

/// In m2. `fed` is the sum of all others.
struct PieceAreas {
    double fed, setup, rejects, cut_out, surplus, went_on;
};

[[nodiscard]] PieceAreas piece_areas(const Pieces& pieces, const orders::OrderRecord& order, const RouteStep& step);

/// The order's sheets, so many side by side on a roll. Lengths in m.
[[nodiscard]] run::WebCut web_cut(const orders::OrderRecord& order, double roll_width_mm, double outs);

/// The order's own layout as it was quoted, with the share of the web that it pays.
[[nodiscard]] run::WebCut quoted_cut(const orders::OrderRecord& order);

/// In m2. A document tells of `run_waste` and `surplus` as one, because the sheets of a row are not counted at the
/// knife.
struct WebAreas {
    double good, side_trim, order_change, run_waste, surplus;

    [[nodiscard]] double run() const { return run_waste + surplus; }
};

/// Of `metres` of web, the order change among them.
[[nodiscard]] WebAreas web_areas(const run::WebCut& cut, double metres, double change_m, double good_sheets);

}  // namespace flutebook::production
