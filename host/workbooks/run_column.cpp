#include "host/workbooks/run_column.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <flutebook/run.hpp>
#include <optional>

namespace flutebook::workbooks {

namespace {

using Look = render::BookCell::Look;

constexpr double no_difference = 1e-9;  // of the larger: what two orders of the same sums may differ by

bool is_same(double left, double right) {
    return std::abs(left - right) <= no_difference * std::max({std::abs(left), std::abs(right), 1.0});
}

// A cell that formulas name, and what it holds.
struct Term {
    std::string cell;
    double value;
};

class ColumnMaker {
public:
    explicit ColumnMaker(const RunColumnSources& sources) : from_(sources), quote_(*sources.costs.quote) {}

    RunColumn make() {
        quantity_ = put_quantity();
        box_area_ = given("box.area");
        sheet_area_ = given("sheet.area");
        ups_ = given("sheet.ups");
        grammage_ = given("board.grammage");
        Term asked = quantity_;
        for (std::size_t k = from_.shape.last_converter; k > 0; --k) asked = put_converter(k, asked);
        put_corrugator(asked);
        put_other_losses();
        put_balance();
        for (const char* name : {"order.quantity", "run.fed", "run.good", "web.length", "web.area", "paper.issued",
                                 "adhesive.dry", "scrap.mass"})
            note_places(name);
        return std::move(column_);
    }

private:
    [[nodiscard]] std::string cell(const RunKey& key) const {
        return fmt::format("{}{}", from_.letter, from_.rows.row_of(key));
    }

    Term put(const RunKey& key, render::BookCell content, double value) {
        column_.cells[from_.rows.row_of(key)] = std::move(content);
        values_[key] = value;
        return {cell(key), value};
    }

    // `sum` comes to `worked`, and the quote has `quoted`.
    Term put(const RunKey& key, const std::string& sum, double worked, double quoted) {
        return put(key,
                   is_same(worked, quoted) ? formula("=" + sum, quoted) : render::BookCell{quoted, Look::worked_out},
                   quoted);
    }

    Term put_quantity() {
        const double sets = quote_.quantity / from_.costs.count;
        const std::string times = from_.costs.count == 1 ? "" : fmt::format("*{}", from_.costs.count);
        return put({"order.quantity"}, from_.quantity_cell + times, sets * from_.costs.count, quote_.quantity);
    }

    // What the run is given: a fact, or what another model gives in its place.
    Term given(const std::string& name, std::size_t index = 0) {
        const explain::TracedFigure& figure = from_.request.trails(from_.costs, name).at(index).figures.front();
        return put({name, index}, formula("=" + InputsSheet::cell(from_.inputs.row_of(figure)), figure.value),
                   figure.value);
    }

    [[nodiscard]] double lost(const std::string& cause, std::size_t step) const {
        for (const auto& loss : quote_.mass.losses)
            if (loss.cause == cause) return loss.by_step_kg[step];
        return 0;
    }

    // `area` is a sum of m2 of board.
    Term put_loss(const std::string& cause, std::size_t step, const std::string& area, double m2) {
        return put({cause, step}, fmt::format("MAX(({})*{}/1000,0)", area, grammage_.cell),
                   std::max(run::mass(m2, grammage_.value), 0.0), lost(cause, step));
    }

    void put_parting(std::size_t step, const Term& sheets, const Term& asked) {
        put_loss("cut-out", step,
                 fmt::format("{}*({}-{}*{})", sheets.cell, sheet_area_.cell, ups_.cell, box_area_.cell),
                 sheets.value * (sheet_area_.value - ups_.value * box_area_.value));
        if (step > 0)
            put_loss("surplus", step, fmt::format("({}*{}-{})*{}", sheets.cell, ups_.cell, asked.cell, box_area_.cell),
                     (sheets.value * ups_.value - asked.value) * box_area_.value);
    }

    // Good pieces that leave a step, where the next one takes `asked`.
    Term put_good(std::size_t step, const Term& asked) {
        const bool parts = step == from_.shape.parting;
        return put({"run.good", step}, parts ? whole_up(asked.cell + "/" + ups_.cell) : asked.cell,
                   parts ? run::sheets_for(asked.value, ups_.value) : asked.value, quote_.good[step]);
    }

    // Returns what it is fed.
    Term put_converter(std::size_t k, const Term& asked) {
        const Term waste = given("step.run_waste", k), setup = given("step.setup_sheets", k);
        const Term area = given("step.piece_area", k), good = put_good(k, asked);
        const Term fed =
            put({"run.fed", k}, whole_up(fmt::format("{}/(1-{})", good.cell, waste.cell)) + "+" + setup.cell,
                run::fed(good.value, waste.value, setup.value), quote_.fed[k]);
        put_loss("setup", k, setup.cell + "*" + area.cell, setup.value * area.value);
        put_loss("rejects", k, fmt::format("({}-{}-{})*{}", fed.cell, setup.cell, good.cell, area.cell),
                 (fed.value - setup.value - good.value) * area.value);
        if (k == from_.shape.parting) put_parting(k, good, asked);
        return fed;
    }

    void put_corrugator(const Term& asked) {
        const Term good = put_good(0, asked);
        const Term roll = given("web.roll_width"), trim = given("web.trim"), outs = given("web.outs");
        const Term chop = given("sheet.chop"), share = given("web.share"), change = given("web.order_change");
        const Term waste = given("step.run_waste", 0);
        const run::WebCut cut{roll.value, roll.value - trim.value, outs.value,
                              chop.value, sheet_area_.value,       share.value};
        const double rows = run::cuts(good.value, outs.value), good_m = run::good_length(cut, good.value);
        const Term cuts = put({"web.cuts"}, whole_up(good.cell + "/" + outs.cell), rows, rows);
        const Term good_length =
            put({"web.good_length"}, fmt::format("{}*({}*{})", share.cell, cuts.cell, chop.cell), good_m, good_m);
        const Term length = put({"web.length"}, fmt::format("{}/(1-{})+{}", good_length.cell, waste.cell, change.cell),
                                run::web_length(good_m, waste.value, change.value), quote_.web_length_m);
        const Term area =
            put({"web.area"}, length.cell + "*" + roll.cell, length.value * roll.value, quote_.web_area_m2);
        put_issue(area);
        const run::WebLoss lost = run::web_loss(cut, length.value, change.value, good.value);
        const std::string used = fmt::format("(({}-{})/{})", roll.cell, trim.cell, share.cell);
        put_loss("side-trim", 0, fmt::format("{}*({}-{})", length.cell, roll.cell, used), lost.side_trim);
        put_loss("order-change", 0, change.cell + "*" + used, lost.order_change);
        put_loss("corrugator-run", 0, fmt::format("({}-{}-{})*{}", length.cell, change.cell, good_length.cell, used),
                 lost.run_waste);
        put_web_surplus({cuts, outs, good}, asked);
        if (from_.shape.parting == 0) put_parting(0, good, asked);
    }

    // Sheets of the last row that nobody takes, and, where boxes part at once, boxes of the last sheet.
    struct SheetsOfRows {
        Term cuts, outs, good;
    };
    void put_web_surplus(const SheetsOfRows& sheets, const Term& asked) {
        const auto& [cuts, outs, good] = sheets;
        std::string area = fmt::format("({}*{}-{})*{}", cuts.cell, outs.cell, good.cell, sheet_area_.cell);
        double m2 = (cuts.value * outs.value - good.value) * sheet_area_.value;
        if (from_.shape.parting == 0) {
            area += fmt::format("+({}*{}-{})*{}", good.cell, ups_.cell, asked.cell, box_area_.cell);
            m2 += (good.value * ups_.value - asked.value) * box_area_.value;
        }
        put_loss("surplus", 0, area, m2);
    }

    // The papers and the adhesive of an area of web.
    void put_issue(const Term& area) {
        const Term roll_loss = given("web.roll_loss");
        const auto& quoted = from_.request.trails(from_.costs, "paper.issued");
        std::string glue;
        double glue_gsm = 0, paper_kg = 0;
        for (std::size_t p = 0; p < from_.shape.plies; ++p) {
            const Term grammage = given("ply.grammage", p), take_up = given("ply.take_up", p);
            const Term adhesive = given("ply.adhesive", p);
            const double kg = run::paper_issued(area.value, grammage.value, take_up.value, roll_loss.value);
            paper_kg += put({"paper.issued", p},
                            fmt::format("{}*{}*{}/1000/(1-{})", area.cell, grammage.cell, take_up.cell, roll_loss.cell),
                            kg, quoted.at(p).figures.front().value)
                            .value;
            glue += (p == 0 ? "" : "+") + adhesive.cell;
            glue_gsm += adhesive.value;
        }
        const Term paper =
            put({"mass.issued"},
                fmt::format("SUM({}:{})", cell({"paper.issued", 0}), cell({"paper.issued", from_.shape.plies - 1})),
                paper_kg, quote_.mass.issued_kg);
        put({"adhesive.dry"}, fmt::format("{}*({})/1000", area.cell, glue), run::mass(area.value, glue_gsm),
            quote_.mass.adhesive_kg);
        put({"roll-ends", 0}, paper.cell + "*" + roll_loss.cell, paper.value * roll_loss.value, lost("roll-ends", 0));
    }

    // What another model of the run loses beside these, and what each step loses in all.
    void put_other_losses() {
        for (std::size_t k = 0; k <= from_.shape.last_converter; ++k) {
            const std::vector<std::string> known = known_causes(from_.shape, k);
            std::string sum;
            double kg = 0;
            for (const auto& loss : quote_.mass.losses) {
                const bool is_known = std::find(known.begin(), known.end(), loss.cause) != known.end();
                if (!is_known && loss.by_step_kg[k] == 0) continue;
                if (!is_known) put({loss.cause, k}, {loss.by_step_kg[k], Look::worked_out}, loss.by_step_kg[k]);
                sum += (sum.empty() ? "" : "+") + cell({loss.cause, k});
                kg += loss.by_step_kg[k];
            }
            put({"scrap.mass", k}, formula("=" + sum, kg), kg);
        }
    }

    void put_balance() {
        const answers::MassBalance& mass = quote_.mass;
        const Term product =
            put({"mass.product"}, fmt::format("{}*{}*{}/1000", quantity_.cell, box_area_.cell, grammage_.cell),
                run::mass(quantity_.value * box_area_.value, grammage_.value), mass.product_kg);
        const Term loss = put(
            {"mass.loss"},
            formula(fmt::format("=SUM({0}{1}:{0}{2})", from_.letter, from_.rows.first_loss(), from_.rows.last_loss()),
                    mass.loss_kg),
            mass.loss_kg);
        put({"balance"},
            formula(fmt::format("=ROUND({}+{}-{}-{},6)", cell({"mass.issued"}), cell({"adhesive.dry"}), product.cell,
                                loss.cell),
                    0, Look::total),
            0);
    }

    // Lines of cost name a number by its place; where it is another number there, as under another model, they do not.
    void note_places(const std::string& name) {
        const auto& trails = from_.request.trails(from_.costs, name);
        for (std::size_t i = 0; i < trails.size(); ++i) {
            const explain::TracedFigure& figure = trails[i].figures.front();
            const auto found = values_.find({name, i});
            if (found != values_.end() && found->second == figure.value)
                column_.known[{name, figure.where}] = fmt::format("${}${}", from_.letter, from_.rows.row_of({name, i}));
        }
    }

    const RunColumnSources& from_;
    const answers::Quote& quote_;
    Term quantity_{}, box_area_{}, sheet_area_{}, ups_{}, grammage_{};
    RunColumn column_;
    std::map<RunKey, double> values_;
};

}  // namespace

RunColumn run_column(const RunColumnSources& sources) {
    return ColumnMaker(sources).make();
}

}  // namespace flutebook::workbooks
