// An order's run on a corrugator: what went into the board, what became sheets, and what was lost by cause.
//
// All that enters leaves at once: metres x roll width of board of the order's make. Papers and adhesive are kept apart,
// each with its share of the board, so that the month can trace their cost.
#include <fmt/format.h>

#include <flutebook/run.hpp>
#include <string>
#include <vector>

#include "host/production/accounts.hpp"
#include "host/production/entry_from_row.hpp"
#include "host/production/pieces.hpp"

namespace flutebook::production {

namespace {

constexpr double mm_per_m = 1e3;
// Lengths less than this apart are one: sums of decimals stray by less.
constexpr double same_m = 1e-9;

// How the web was cut: as the row says, or as the order was laid out.
struct Web {
    bool is_own;  // the order's own layout
    run::WebCut cut;
    double share = 1;  // of the whole roll, where the row says how wide that is
};

std::optional<Web> read_web(RowValidation& validation, const orders::OrderRecord& order) {
    const auto width = validation.row().number(DocumentColumn::roll_width);
    const auto outs = validation.row().number(DocumentColumn::outs);
    const auto whole = validation.row().number(DocumentColumn::web);
    if (whole && !width) {
        validation.expect(DocumentColumn::web, "the roll width and the outs beside it: the share of the order");
        return std::nullopt;
    }
    if (!width && !outs) return Web{true, web_cut(order, order.roll_width_mm, order.outs)};
    if (!width) validation.expect(DocumentColumn::roll_width, "the roll width beside the outs, or neither");
    if (!outs) validation.expect(DocumentColumn::outs, "the outs beside the roll width, or neither");
    if (!width || !outs) return std::nullopt;
    return Web{false, web_cut(order, *width, *outs), whole ? *width / *whole : 1};
}

// The whole roll, where other orders shared it.
void check_whole_web(RowValidation& validation, const plant::Corrugator& corrugator) {
    const auto whole = validation.row().number(DocumentColumn::web);
    if (!whole) return;
    const auto& limits = corrugator.roll_width_mm;
    const double slack_mm = same_m * mm_per_m;
    if (validation.row().value(DocumentColumn::roll_width) > *whole + slack_mm)
        validation.expect(DocumentColumn::web, fmt::format("at least the {} mm of it that the order has",
                                                           validation.row().text(DocumentColumn::roll_width)));
    if (*whole > limits.high + slack_mm || *whole < limits.low - slack_mm)
        validation.expect(DocumentColumn::web, fmt::format("a roll of {} to {} mm, which {} takes", limits.low,
                                                           limits.high, corrugator.code));
}

// A row may have its share of a roll that other orders share, so no roll is too narrow but the order's own.
void check_roll(RowValidation& validation, const plant::Corrugator& corrugator, const orders::OrderRecord& order,
                const Web& web) {
    const double width_mm = web.cut.roll_width * mm_per_m;
    const auto& limits = corrugator.roll_width_mm;
    const bool is_too_wide = width_mm > limits.high + same_m * mm_per_m;
    const bool is_too_narrow = width_mm < limits.low - same_m * mm_per_m;
    if (!web.is_own && is_too_wide)
        validation.expect(DocumentColumn::roll_width,
                          fmt::format("at most {} mm, the widest roll that {} takes", limits.high, corrugator.code));
    if (web.is_own && (is_too_wide || is_too_narrow))
        validation.expect(DocumentColumn::corrugator,
                          fmt::format("a corrugator that takes the order's own roll of {} mm: this one takes {} to {}",
                                      width_mm, limits.low, limits.high));
    if (web.cut.used_width > web.cut.roll_width + same_m)
        validation.expect(web.is_own ? DocumentColumn::order : DocumentColumn::outs,
                          fmt::format("no more than {} mm of roll holds: {} x {} mm of sheet do not fit on it",
                                      width_mm, web.cut.outs, order.slit_mm));
}

void check_run(RowValidation& validation, const run::WebCut& cut, const WebAreas& went) {
    const auto& row = validation.row();
    const double metres = row.value(DocumentColumn::metres);
    const double change = row.value(DocumentColumn::order_change_metres);
    if (change > metres) {
        validation.expect(DocumentColumn::order_change_metres,
                          fmt::format("no more than the {} m of the run", row.text(DocumentColumn::metres)));
        return;
    }
    if (went.run() >= -same_m * (1 + metres * cut.used_width)) return;
    const double most = run::whole_down((metres - change) * cut.used_width / cut.sheet_area);
    validation.expect(DocumentColumn::good_sheets,
                      fmt::format("no more than was fed: {} sheets after the order change", most));
}

// A material's share of the board, g/m2. A paper that is in two plies is one material.
struct PaperPart {
    std::string material;
    double gsm;
};

std::vector<PaperPart> papers_of(const orders::OrderRecord& order) {
    std::vector<PaperPart> parts;
    for (const auto& ply : order.plies) {
        const double gsm = ply.grammage_gsm * ply.take_up;
        auto* known = static_cast<PaperPart*>(nullptr);
        for (auto& part : parts)
            if (part.material == ply.paper) known = &part;
        if (known != nullptr)
            known->gsm += gsm;
        else
            parts.push_back({ply.paper, gsm});
    }
    return parts;
}

// Where board of an area goes, and why.
struct Outlet {
    std::string to, cause;
    double area_m2;
};

// Every outlet takes whole grams that add up to the board combined; in each, the adhesive's grams add up to what was
// bought in, and the papers share the rest.
void add_outlets(ledger::Draft& draft, const orders::OrderRecord& order, const std::vector<Outlet>& outlets,
                 Grams combined, Grams adhesive) {
    std::vector<double> board_kg, adhesive_kg;
    for (const auto& outlet : outlets) {
        board_kg.push_back(run::mass(outlet.area_m2, order.grammage_gsm));
        adhesive_kg.push_back(run::mass(outlet.area_m2, order.adhesive_gsm));
    }
    const auto board = parts_of(combined, board_kg);
    const auto glue = parts_of(adhesive, adhesive_kg);
    const auto papers = papers_of(order);
    for (std::size_t i = 0; i < outlets.size(); ++i) {
        const auto& outlet = outlets[i];
        std::vector<double> paper_kg;
        for (const auto& paper : papers) paper_kg.push_back(run::mass(outlet.area_m2, paper.gsm));
        const auto grams = parts_of(board[i] - glue[i], paper_kg);
        for (std::size_t j = 0; j < papers.size(); ++j)
            add(draft, {draft.centre, outlet.to, papers[j].material, outlet.cause, grams[j], {}});
        add(draft, {draft.centre, outlet.to, material::adhesive, outlet.cause, glue[i], {}});
    }
}

orders::CorrugatorAllowance allowance_of(const orders::OrderRecord& order, const plant::Corrugator& corrugator) {
    const auto* kept = order.find_corrugator(corrugator.code);
    if (kept != nullptr) return *kept;
    return {corrugator.code, corrugator.run_waste, corrugator.roll_loss,
            corrugator.order_change_m * order.paid_changes()};
}

// Section by section as a quote would have it, for the good sheets that were made. A row without an order change
// continues a run: it is allowed none; an order that shared the web is allowed its share of the change. An order that
// was quoted with a share is allowed what it was quoted with, however its web was shared.
void add_expected(ledger::Draft& draft, const orders::OrderRecord& order, const orders::CorrugatorAllowance& allowed,
                  const DocumentRow& row, double web_share) {
    const double good = row.value(DocumentColumn::good_sheets);
    const auto cut = quoted_cut(order);
    const double change_m = row.value(DocumentColumn::order_change_metres) > 0
                                ? allowed.order_change_m * (order.web_share > 0 ? 1 : web_share)
                                : 0;
    const double length_m = run::web_length(run::good_length(cut, good), allowed.run_waste, change_m);
    const auto loss = web_areas(cut, length_m, change_m, good);
    double issued_kg = 0;
    for (const auto& ply : order.plies)
        issued_kg += run::paper_issued(length_m * cut.roll_width, ply.grammage_gsm, ply.take_up, allowed.roll_loss);
    const auto board_kg = [&](double area_m2) { return to_grams(run::mass(area_m2, order.grammage_gsm)); };
    add(draft, ledger::Expected{"roll-ends", to_grams(issued_kg * allowed.roll_loss)});
    add(draft, ledger::Expected{"side-trim", board_kg(loss.side_trim)});
    add(draft, ledger::Expected{"order-change", board_kg(loss.order_change)});
    add(draft, ledger::Expected{"corrugator-run", board_kg(loss.run())});
}

}  // namespace

RowResult corrugator_run(RowValidation& validation) {
    const auto& row = validation.row();
    validation.check_shift();
    const auto* corrugator = validation.corrugator();
    const auto* order = validation.order();
    if (corrugator == nullptr || order == nullptr) return validation.objections();
    const auto web = read_web(validation, *order);
    if (!web) return validation.objections();
    check_roll(validation, *corrugator, *order, *web);
    check_whole_web(validation, *corrugator);
    const auto went = web_areas(web->cut, row.value(DocumentColumn::metres),
                                row.value(DocumentColumn::order_change_metres), row.value(DocumentColumn::good_sheets));
    check_run(validation, web->cut, went);
    const double combined_m2 = row.value(DocumentColumn::metres) * web->cut.roll_width;
    const double combined_kg = run::mass(combined_m2, order->grammage_gsm);
    const double adhesive_kg = run::mass(combined_m2, order->adhesive_gsm);
    if (!validation.passed() || !validation.is_light_enough(DocumentColumn::metres, combined_kg))
        return validation.objections();
    const auto adhesive_cost = validation.amount(DocumentColumn::metres, adhesive_kg, order->adhesive_rate);
    if (!validation.passed()) return validation.objections();

    auto draft = validation.draft();
    draft.centre = corrugator->code;
    draft.order = order->number;
    draft.board = order->board;
    const auto adhesive = to_grams(adhesive_kg);
    add(draft, {account::adhesive_store, draft.centre, material::adhesive, "", adhesive, adhesive_cost});
    const auto* product = order->route.empty() ? account::finished : account::floor;
    add_outlets(draft, *order,
                {{product, "", went.good},
                 {account::loose_scrap, "side-trim", went.side_trim},
                 {account::loose_scrap, "order-change", went.order_change},
                 {account::loose_scrap, "corrugator-run", went.run()}},
                to_grams(combined_kg), adhesive);
    add_expected(draft, *order, allowance_of(*order, *corrugator), row, web->share);
    return draft;
}

}  // namespace flutebook::production
