#include "host/services/orders/run_as_posted.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <flutebook/run.hpp>
#include <string>

#include "host/base/errors.hpp"

namespace flutebook::services {

namespace {

using engine::MeasuredRun;
using production::WebAreas;

// A run without anything in it yet.
MeasuredRun empty_run(const RunBasis& basis) {
    const std::size_t steps = basis.row.steps();
    const auto& causes = basis.graph.models[basis.graph.shedder].losses;
    MeasuredRun made{};
    made.fed.assign(steps, 0);
    made.good.assign(steps, 0);
    made.issued_kg.assign(basis.row.plies(), 0);
    made.losses.assign(causes.size(), std::vector<double>(steps, 0));
    return made;
}

void lose(MeasuredRun& made, const RunBasis& basis, const std::string& cause, std::size_t step, double kg) {
    const contract::Model& model = basis.graph.models[basis.graph.shedder];
    const auto found =
        std::find_if(model.losses.begin(), model.losses.end(), [&](const auto& own) { return own.cause == cause; });
    if (found != model.losses.end())
        made.losses[static_cast<std::size_t>(found - model.losses.begin())][step] += kg;
    else if (kg != 0)
        throw ModelError(fmt::format("{}: sheds no {}, which the order lost; cost the order without this model",
                                     model.where(), cause));
}

// Rounding leaves a hair under nothing where nothing is lost.
double not_below_nothing(double value) {
    return std::max(value, 0.0);
}

void add_converters(MeasuredRun& made, const RunBasis& basis) {
    const double gsm = basis.row.order->layout->board.grammage_gsm;
    const auto& order = basis.order;
    for (std::size_t k = 1; k <= order.last_step(); ++k)
        for (const auto& run : basis.actual.steps[k - 1]) {
            made.fed[k] += run.pieces.fed;
            made.good[k] += run.pieces.good;
            lose(made, basis, "setup", k, run::mass(run.areas.setup, gsm));
            lose(made, basis, "rejects", k, run::mass(run.areas.rejects, gsm));
            lose(made, basis, "cut-out", k, not_below_nothing(run::mass(run.areas.cut_out, gsm)));
            lose(made, basis, "surplus", k, run::mass(run.areas.surplus, gsm));
        }
    const std::size_t d = order.parting;
    if (d > 0 && d < order.last_step()) {
        const double left = not_below_nothing(basis.actual.went_on(d) - basis.actual.fed(d + 1));
        lose(made, basis, "surplus", d, run::mass(left * order.box_area_m2, gsm));
    }
    made.fed.back() = made.good.back() = basis.actual.boxes();
}

// Board of an area combined, with the paper and adhesive that it takes.
void add_web(MeasuredRun& made, const RunBasis& basis, double metres, double area_m2, double roll_loss) {
    made.web_length_m += metres;
    made.web_area_m2 += area_m2;
    const auto& plies = basis.row.order->layout->board.plies;
    double issued_kg = 0;
    double adhesive_gsm = 0;
    for (std::size_t p = 0; p < plies.size(); ++p) {
        const double kg = run::paper_issued(area_m2, plies[p].grammage_gsm, plies[p].take_up, roll_loss);
        made.issued_kg[p] += kg;
        issued_kg += kg;
        adhesive_gsm += plies[p].adhesive_gsm;
    }
    made.adhesive_kg += run::mass(area_m2, adhesive_gsm);
    lose(made, basis, "roll-ends", 0, issued_kg * roll_loss);
}

void add_web_losses(MeasuredRun& made, const RunBasis& basis, const WebAreas& areas) {
    const double gsm = basis.row.order->layout->board.grammage_gsm;
    // More sheets than full rows off the knife hold: then nobody can tell the two apart.
    const bool is_one = areas.run_waste < 0;
    lose(made, basis, "side-trim", 0, not_below_nothing(run::mass(areas.side_trim, gsm)));
    lose(made, basis, "order-change", 0, run::mass(areas.order_change, gsm));
    lose(made, basis, "corrugator-run", 0, not_below_nothing(run::mass(is_one ? areas.run() : areas.run_waste, gsm)));
    lose(made, basis, "surplus", 0, is_one ? 0 : run::mass(areas.surplus, gsm));
}

}  // namespace

MeasuredRun converters_as_posted(const RunBasis& basis, const engine::Allowances& allowed) {
    MeasuredRun made = empty_run(basis);
    add_converters(made, basis);
    const auto& order = basis.order;
    const auto cut = production::web_cut(order, order.roll_width_mm, order.outs);
    const double good = basis.actual.good_sheets();
    const double metres =
        run::web_length(run::cuts(good, cut.outs) * cut.chop, allowed.run_waste[0], allowed.order_change_m);
    made.good[0] = good;
    add_web(made, basis, metres, metres * cut.roll_width, allowed.roll_loss);
    add_web_losses(made, basis, production::web_areas(cut, metres, allowed.order_change_m, good));
    return made;
}

MeasuredRun all_as_posted(const RunBasis& basis) {
    MeasuredRun made = empty_run(basis);
    add_converters(made, basis);
    for (const auto& run : basis.actual.web) {
        made.good[0] += run.good_sheets;
        add_web(made, basis, run.metres, run.combined_m2(), basis.order.find_corrugator(run.corrugator)->roll_loss);
        add_web_losses(made, basis, run.areas);
    }
    return made;
}

}  // namespace flutebook::services
