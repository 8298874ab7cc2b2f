// Where the board of a run on the corrugator went, by area: what documents post and what an order's cost is worked out
// from.
#pragma once

#include <flutebook/run.hpp>

#include "host/orders/order_record.hpp"

namespace flutebook::production {

/// The order's sheets, so many side by side on a roll. Lengths in m.
[[nodiscard]] run::WebCut web_cut(const orders::OrderRecord& order, double roll_width_mm, double outs);

/// In m2. A document tells of `run_waste` and `surplus` as one, because the sheets of a row are not counted at the
/// knife.
struct WebAreas {
    double good, side_trim, order_change, run_waste, surplus;

    [[nodiscard]] double run() const { return run_waste + surplus; }
};

/// Of `metres` of web, the order change among them.
[[nodiscard]] WebAreas web_areas(const run::WebCut& cut, double metres, double change_m, double good_sheets);

}  // namespace flutebook::production
