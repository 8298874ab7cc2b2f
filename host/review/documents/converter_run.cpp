// An order's run on a converter: what the floor fed it, what went on, and what was lost by cause.
//
// Pieces are sheets up to and including the step where blanks part from the sheet, blanks or boxes after it.
#include <fmt/format.h>

#include <flutebook/run.hpp>
#include <string>

#include "host/catalogue/shown.hpp"
#include "host/review/documents/accounts.hpp"
#include "host/review/documents/grams.hpp"
#include "host/review/documents/kinds.hpp"

namespace flutebook::review {

namespace {

// The pieces of a row. `good` went through the machine unharmed, and `holds` boxes.
struct Pieces {
    double fed, setup, rejected, good;
    double holds;
    double boxes;  // that count; only at the last step
};

// The step that a machine stands for, and what its pieces are.
struct Step {
    std::size_t number;
    bool parts;    // blanks part from the sheet here
    bool is_last;  // what leaves is finished
    double piece_m2;
};

std::optional<Step> step_of(Examination& examination, const OrderRecord& order, const catalogue::Converter& converter) {
    const auto number = order.step_of(converter.code);
    if (!number) {
        examination.expect(Column::converter,
                           order.route.empty() ? std::string("no converter: the order is made by the corrugator alone")
                                               : fmt::format("a machine of a kind that the order's route has: {}",
                                                             fmt::join(order.route, " > ")));
        return std::nullopt;
    }
    return Step{*number, *number == order.parting, *number == order.last_step(),
                *number <= order.parting ? order.sheet_area_m2 : order.box_area_m2};
}

Pieces read_pieces(const Row& row, const OrderRecord& order, const Step& step) {
    Pieces pieces{};
    pieces.fed = row.value(Column::fed);
    pieces.setup = row.value(Column::setup_sheets);
    pieces.rejected = row.value(Column::rejected);
    pieces.good = pieces.fed - pieces.setup - pieces.rejected;
    pieces.holds = step.parts ? pieces.good * order.ups : pieces.good;
    pieces.boxes = row.number(Column::good_boxes).value_or(0);
    return pieces;
}

void check_pieces(Examination& examination, const Step& step, const Pieces& pieces) {
    if (pieces.good < 0)
        examination.object(Column::fed, fmt::format("found {}; expected at least the {} sheets of setup and rejects",
                                                    catalogue::shown(examination.row().text(Column::fed)),
                                                    pieces.setup + pieces.rejected));
    const bool has_boxes = examination.row().number(Column::good_boxes).has_value();
    if (has_boxes && !step.is_last)
        examination.expect(Column::good_boxes, "nothing: boxes are counted at the last machine of the route");
    else if (!has_boxes && step.is_last)
        examination.expect(Column::good_boxes, "the good boxes of the last machine of the route");
    else if (pieces.good >= 0 && pieces.boxes > pieces.holds)
        examination.expect(Column::good_boxes,
                           fmt::format("no more than was fed: {} good pieces hold {}", pieces.good, pieces.holds));
}

// What a machine is allowed for the pieces that came through it good. A row without setup sheets continues a run: it
// is allowed none.
void add_expected(ledger::Draft& draft, const OrderRecord& order, const ConverterAllowance& allowed,
                  const Pieces& pieces, const Step& step, Grams cut_out) {
    const auto board_kg = [&](double count) { return to_grams(run::mass(count * step.piece_m2, order.grammage_gsm)); };
    const double setup = pieces.setup > 0 ? allowed.setup_sheets : 0;
    add(draft, ledger::Expected{"setup", board_kg(setup)});
    add(draft, ledger::Expected{"rejects", board_kg(run::fed(pieces.good, allowed.run_waste, 0) - pieces.good)});
    add(draft, ledger::Expected{"cut-out", cut_out});
}

void add_movements(ledger::Draft& draft, const OrderRecord& order, const Pieces& pieces, const Step& step) {
    const auto kg = [&](double area_m2) { return run::mass(area_m2, order.grammage_gsm); };
    const double box = order.box_area_m2;
    const double cut_out_m2 = step.parts ? pieces.good * (order.sheet_area_m2 - order.ups * box) : 0;
    const double went_on_m2 = step.is_last ? pieces.boxes * box
                              : step.parts ? pieces.holds * box
                                           : pieces.good * step.piece_m2;
    const double surplus_m2 = step.is_last ? (pieces.holds - pieces.boxes) * box : 0;
    const auto fed = to_grams(kg(pieces.fed * step.piece_m2));
    const auto parts = parts_of(fed, {kg(pieces.setup * step.piece_m2), kg(pieces.rejected * step.piece_m2),
                                      kg(cut_out_m2), kg(surplus_m2), kg(went_on_m2)});
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

Worth converter_run(Examination& examination) {
    const auto& row = examination.row();
    examination.check_shift();
    const auto* converter = examination.converter();
    const auto* order = examination.order();
    if (converter == nullptr || order == nullptr) return examination.objections();
    const auto step = step_of(examination, *order, *converter);
    if (!step) return examination.objections();
    const auto pieces = read_pieces(row, *order, *step);
    check_pieces(examination, *step, pieces);
    const double fed_kg = run::mass(pieces.fed * step->piece_m2, order->grammage_gsm);
    if (!examination.passed() || !examination.is_light_enough(Column::fed, fed_kg)) return examination.objections();

    auto draft = examination.draft();
    draft.centre = converter->code;
    draft.order = order->number;
    draft.board = order->board;
    add_movements(draft, *order, pieces, *step);
    return draft;
}

}  // namespace flutebook::review
