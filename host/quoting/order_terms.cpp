#include "host/quoting/order_terms.hpp"

#include <algorithm>

#include "host/quoting/formula_losses.hpp"

namespace flutebook::quoting {

namespace {

using engine::Costing;
using engine::Engine;
using engine::Row;
using orders::OrderRecord;

// Money per dry kg: what the models that live on the adhesive charge as material where it is applied.
double adhesive_rate(const Engine& engine, const Costing& costing) {
    Money charged;
    for (const engine::LineAmount& line : costing.lines)
        if (is_of_adhesive(engine.graph(), line)) charged += line.amount;
    return costing.adhesive_kg > 0 ? charged.to_double() / costing.adhesive_kg : 0;
}

void add_board(OrderRecord& result, const Row& row) {
    const geometry::BoardMake& board = row.order->layout->board;
    result.board = row.order->plant->boards[row.order->request->board].code;
    result.grammage_gsm = board.grammage_gsm;
    result.adhesive_gsm = 0;
    for (const geometry::PlyMake& ply : board.plies) {
        result.plies.push_back(
            {row.order->plant->paper(ply.paper).code, ply.grammage_gsm, ply.take_up, ply.adhesive_gsm});
        result.adhesive_gsm += ply.adhesive_gsm;
    }
}

void add_layout(OrderRecord& result, const Row& row) {
    const geometry::Candidate& way = *row.candidate;
    result.corrugator = way.corrugator->code;
    if (way.corrugator->is_supplier) result.bought_from = way.corrugator->code;
    static_cast<orders::SheetCut&>(result) = way.cut();
    result.sheet_area_m2 = way.sheet_area_m2;
    result.box_area_m2 = row.order->layout->blank.area_m2;
    result.route = way.route_codes();
    result.parting = way.route->parting;
    const plant::TrimPolicy& trim = row.order->trim;
    if (!trim.share) return;
    result.web_share = plant::web_share(trim, way.roll_width_mm - way.trim_mm, way.roll_width_mm);
    result.changes = trim.changes;
}

void add_allowances(OrderRecord& result, const Row& row, const engine::Allowances& quoted) {
    if (row.candidate->corrugator->is_supplier)
        result.corrugators.push_back(
            {row.candidate->corrugator->code, quoted.run_waste[0], quoted.roll_loss, quoted.order_change_m});
    for (const auto& item : row.order->plant->corrugators) {
        const bool is_quoted = &item == row.candidate->corrugator;
        result.corrugators.push_back(
            {item.code, is_quoted ? quoted.run_waste[0] : item.run_waste, is_quoted ? quoted.roll_loss : item.roll_loss,
             is_quoted ? quoted.order_change_m : item.order_change_m * row.order->trim.changes});
    }
    const auto& route = row.candidate->route->converters;
    for (const auto& converter : row.order->plant->converters) {
        const auto at = std::find(route.begin(), route.end(), &converter);
        const auto step = static_cast<std::size_t>(at - route.begin()) + 1;
        const bool is_quoted = at != route.end();
        result.converters.push_back({converter.code, converter.kind,
                                     is_quoted ? quoted.run_waste[step] : converter.run_waste,
                                     is_quoted ? quoted.setup_sheets[step] : converter.setup_sheets});
    }
}

bool is_material(const engine::Graph& graph, const engine::LineAmount& line) {
    return graph.models[line.model].lines[line.line].cost_class == contract::CostClass::material;
}

bool takes_adhesive(const contract::Model& model) {
    return std::any_of(model.needs.begin(), model.needs.end(),
                       [](const contract::Name& need) { return need.name == "adhesive.dry"; });
}

}  // namespace

orders::OrderRecord terms_of(const Engine& engine, const Row& row, const Costing& costing) {
    OrderRecord result{};
    result.quantity = row.order->quantity;
    result.customer = row.order->request->customer;
    result.style = row.order->request->style;
    if (!row.order->layout->piece.name.empty()) {
        result.piece = row.order->layout->piece.name;
        result.sets = row.order->quantity / row.order->layout->piece.count;
    }
    add_board(result, row);
    result.adhesive_rate = adhesive_rate(engine, costing);
    add_layout(result, row);
    add_allowances(result, row, costing.allowances);
    result.lost_otherwise_by = lost_otherwise_by(engine, row, costing);
    return result;
}

bool is_of_ply(const engine::Graph& graph, const engine::LineAmount& line, std::size_t ply) {
    return line.ply == ply && is_material(graph, line);
}

bool is_of_adhesive(const engine::Graph& graph, const engine::LineAmount& line) {
    return line.step == 0 && !line.ply && is_material(graph, line) && takes_adhesive(graph.models[line.model]);
}

}  // namespace flutebook::quoting
