// An order's run on a converter: what was fed to it, what was passed on, and what was lost by cause.
//
// Pieces are sheets up to and including the step where blanks part from the sheet, blanks or boxes after it.
#include <fmt/format.h>

#include <flutebook/run.hpp>
#include <string>

#include "host/base/quoted_text.hpp"
#include "host/production/accounts.hpp"
#include "host/production/entry_from_row.hpp"
#include "host/production/pieces.hpp"

namespace flutebook::production {

namespace {

std::optional<RouteStep> step_of(RowValidation& validation, const orders::OrderRecord& order,
                                 const plant::Converter& converter) {
    const auto number = order.step_of(converter.code);
    if (!number) {
        validation.expect(DocumentColumn::converter,
                          order.route.empty() ? std::string("no converter: the order is made by the corrugator alone")
                                              : fmt::format("a machine of a kind that the order's route has: {}",
                                                            fmt::join(order.route, " > ")));
        return std::nullopt;
    }
    return route_step(order, *number);
}

void check_pieces(RowValidation& validation, const RouteStep& step, const Pieces& pieces) {
    if (pieces.good < 0)
        validation.object(
            DocumentColumn::fed,
            fmt::format("found {}; expected at least the {} sheets of setup and rejects",
                        base::shown(validation.row().text(DocumentColumn::fed)), pieces.setup + pieces.rejected));
    const bool has_boxes = validation.row().number(DocumentColumn::good_boxes).has_value();
    if (has_boxes && !step.is_last)
        validation.expect(DocumentColumn::good_boxes, "nothing: boxes are counted at the last machine of the route");
    else if (!has_boxes && step.is_last)
        validation.expect(DocumentColumn::good_boxes, "the good boxes of the last machine of the route");
    else if (pieces.good >= 0 && pieces.boxes > pieces.holds)
        validation.expect(DocumentColumn::good_boxes,
                          fmt::format("no more than was fed: {} good pieces hold {}", pieces.good, pieces.holds));
}

// What a machine is allowed for the pieces that came through it good. A row without setup sheets continues a run: it
// is allowed none.
void add_expected(ledger::Draft& draft, const orders::OrderRecord& order, const orders::ConverterAllowance& allowed,
                  const Pieces& pieces, const RouteStep& step, Grams cut_out) {
    const auto board_kg = [&](double count) { return to_grams(run::mass(count * step.piece_m2, order.grammage_gsm)); };
    const double setup = pieces.setup > 0 ? allowed.setup_sheets : 0;
    add(draft, ledger::Expected{"setup", board_kg(setup)});
    add(draft, ledger::Expected{"rejects", board_kg(run::fed(pieces.good, allowed.run_waste, 0) - pieces.good)});
    add(draft, ledger::Expected{"cut-out", cut_out});
}

void add_movements(ledger::Draft& draft, const orders::OrderRecord& order, const Pieces& pieces,
                   const RouteStep& step) {
    const auto kg = [&](double area_m2) { return run::mass(area_m2, order.grammage_gsm); };
    const auto went = piece_areas(pieces, order, step);
    const auto fed = to_grams(kg(went.fed));
    const auto parts =
        parts_of(fed, {kg(went.setup), kg(went.rejects), kg(went.cut_out), kg(went.surplus), kg(went.went_on)});
    const auto& machine = draft.centre;
    const auto lose = [&](const char* cause, Grams mass) {
        add(draft, {machine, account::loose_scrap, material::board, cause, mass, {}});
    };
    add(draft, {account::floor, machine, material::board, "", fed, {}});
    lose("setup", parts[0]);
    lose("rejects", parts[1]);
    lose("cut-out", parts[2]);
    lose("surplus", parts[3]);
    add(draft, {machine, step.is_last ? account::finished : account::floor, material::board, "", parts[4], {}});
    add_expected(draft, order, *order.find_converter(machine), pieces, step, parts[2]);
}

}  // namespace

RowResult converter_run(RowValidation& validation) {
    const auto& row = validation.row();
    validation.check_shift();
    const auto* converter = validation.converter();
    const auto* order = validation.order();
    if (converter == nullptr || order == nullptr) return validation.objections();
    const auto step = step_of(validation, *order, *converter);
    if (!step) return validation.objections();
    const auto pieces = pieces_of(row, *order, *step);
    check_pieces(validation, *step, pieces);
    const double fed_kg = run::mass(pieces.fed * step->piece_m2, order->grammage_gsm);
    if (!validation.passed() || !validation.is_light_enough(DocumentColumn::fed, fed_kg))
        return validation.objections();

    auto draft = validation.draft();
    draft.centre = converter->code;
    draft.order = order->number;
    draft.board = order->board;
    add_movements(draft, *order, pieces, *step);
    return draft;
}

}  // namespace flutebook::production
