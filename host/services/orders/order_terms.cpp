#include "host/services/orders/order_terms.hpp"

#include <algorithm>

#include "host/services/orders/material_lines.hpp"

namespace flutebook::services {

namespace {

using engine::Costing;
using engine::Row;
using engine::Engine;
using orders::OrderRecord;

// Money per dry kg: what the models that live on the adhesive charge as material where it is applied.
double adhesive_rate(const Engine& engine, const Costing& costing) {
    Money charged;
    for (const engine::LineAmount& line : costing.lines)
        if (is_of_adhesive(engine.graph(), line)) charged += line.amount;
    return costing.adhesive_kg > 0 ? charged.to_double() / costing.adhesive_kg : 0;
}

void add_board(OrderRecord& made, const Row& row) {
    const geometry::BoardMake& board = row.order->layout->board;
    made.board = row.order->plant->boards[row.order->request->board].code;
    made.grammage_gsm = board.grammage_gsm;
    made.adhesive_gsm = 0;
    for (const geometry::PlyMake& ply : board.plies) {
        made.plies.push_back(
            {row.order->plant->papers[ply.paper].code, ply.grammage_gsm, ply.take_up, ply.adhesive_gsm});
        made.adhesive_gsm += ply.adhesive_gsm;
    }
}

void add_layout(OrderRecord& made, const Row& row) {
    const geometry::Candidate& way = *row.candidate;
    made.corrugator = way.corrugator->code;
    made.roll_width_mm = way.roll_width_mm;
    made.outs = way.outs;
    made.slit_mm = way.slit_mm;
    made.chop_mm = way.chop_mm;
    made.sheet_area_m2 = way.sheet_area_m2;
    made.ups = way.ups;
    made.box_area_m2 = row.order->layout->blank.area_m2;
    for (const auto* converter : way.route->converters) made.route.push_back(converter->code);
    made.parting = way.route->parting;
}

void add_allowances(OrderRecord& made, const Row& row, const engine::Allowances& quoted) {
    for (const auto& own : row.order->plant->corrugators) {
        const bool is_quoted = &own == row.candidate->corrugator;
        made.corrugators.push_back({own.code, is_quoted ? quoted.run_waste[0] : own.run_waste,
                                    is_quoted ? quoted.roll_loss : own.roll_loss,
                                    is_quoted ? quoted.order_change_m : own.order_change_m});
    }
    const auto& route = row.candidate->route->converters;
    for (const auto& own : row.order->plant->converters) {
        const auto at = std::find(route.begin(), route.end(), &own);
        const auto step = static_cast<std::size_t>(at - route.begin()) + 1;
        const bool is_quoted = at != route.end();
        made.converters.push_back({own.code, own.kind, is_quoted ? quoted.run_waste[step] : own.run_waste,
                                   is_quoted ? quoted.setup_sheets[step] : own.setup_sheets});
    }
}

}  // namespace

orders::OrderRecord terms_of(const Engine& engine, const Row& row, const Costing& costing) {
    OrderRecord made{};
    made.quantity = row.order->quantity;
    made.customer = row.order->request->customer;
    made.style = row.order->request->style;
    add_board(made, row);
    made.adhesive_rate = adhesive_rate(engine, costing);
    add_layout(made, row);
    add_allowances(made, row, costing.allowances);
    return made;
}

}  // namespace flutebook::services
