#include "host/production/pieces.hpp"

namespace flutebook::production {

namespace {

constexpr double mm_per_m = 1e3;

}  // namespace

RouteStep route_step(const orders::OrderRecord& order, std::size_t number) {
    return {number, number == order.parting, number == order.last_step(),
            number <= order.parting ? order.sheet_area_m2 : order.box_area_m2};
}

Pieces pieces_of(const DocumentRow& row, const orders::OrderRecord& order, const RouteStep& step) {
    Pieces pieces{};
    pieces.fed = row.value(DocumentColumn::fed);
    pieces.setup = row.value(DocumentColumn::setup_sheets);
    pieces.rejected = row.value(DocumentColumn::rejected);
    pieces.good = pieces.fed - pieces.setup - pieces.rejected;
    pieces.holds = step.parts ? pieces.good * order.ups : pieces.good;
    pieces.boxes = row.number(DocumentColumn::good_boxes).value_or(0);
    return pieces;
}

PieceAreas piece_areas(const Pieces& pieces, const orders::OrderRecord& order, const RouteStep& step) {
    const double box = order.box_area_m2;
    PieceAreas went{};
    went.fed = pieces.fed * step.piece_m2;
    went.setup = pieces.setup * step.piece_m2;
    went.rejects = pieces.rejected * step.piece_m2;
    went.cut_out = step.parts ? pieces.good * (order.sheet_area_m2 - order.ups * box) : 0;
    went.surplus = step.is_last ? (pieces.holds - pieces.boxes) * box : 0;
    went.went_on = step.is_last ? pieces.boxes * box : step.parts ? pieces.holds * box : pieces.good * step.piece_m2;
    return went;
}

run::WebCut web_cut(const orders::OrderRecord& order, double roll_width_mm, double outs) {
    return {roll_width_mm / mm_per_m, outs * order.slit_mm / mm_per_m, outs, order.chop_mm / mm_per_m,
            order.sheet_area_m2};
}

run::WebCut quoted_cut(const orders::OrderRecord& order) {
    run::WebCut cut = web_cut(order, order.roll_width_mm, order.outs);
    cut.share = order.paid_share();
    return cut;
}

WebAreas web_areas(const run::WebCut& cut, double metres, double change_m, double good_sheets) {
    const auto loss = run::web_loss(cut, metres, change_m, good_sheets);
    return {good_sheets * cut.sheet_area, loss.side_trim, loss.order_change, loss.run_waste, loss.surplus};
}

}  // namespace flutebook::production
