#include "host/production/web_areas.hpp"

namespace flutebook::production {

namespace {

constexpr double mm_per_m = 1e3;

}  // namespace

run::WebCut web_cut(const orders::OrderRecord& order, double roll_width_mm, double outs) {
    return {roll_width_mm / mm_per_m, outs * order.slit_mm / mm_per_m, outs, order.chop_mm / mm_per_m,
            order.sheet_area_m2};
}

WebAreas web_areas(const run::WebCut& cut, double metres, double change_m, double good_sheets) {
    const auto loss = run::web_loss(cut, metres, change_m, good_sheets);
    return {good_sheets * cut.sheet_area, loss.side_trim, loss.order_change, loss.run_waste, loss.surplus};
}

}  // namespace flutebook::production
