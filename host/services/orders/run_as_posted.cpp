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
    MeasuredRun result{};
    result.fed.assign(steps, 0);
    result.good.assign(steps, 0);
    result.issued_kg.assign(basis.row.plies(), 0);
    result.losses.assign(causes.size(), std::vector<double>(steps, 0));
    return result;
}

void lose(MeasuredRun& result, const RunBasis& basis, const std::string& cause, std::size_t step, double kg) {
    const contract::Model& model = basis.graph.models[basis.graph.shedder];
    const auto found =
        std::find_if(model.losses.begin(), model.losses.end(), [&](const auto& item) { return item.cause == cause; });
    if (found != model.losses.end())
        result.losses[static_cast<std::size_t>(found - model.losses.begin())][step] += kg;
    else if (kg != 0)
        throw ModelError(fmt::format("{}: sheds no {}, which the order lost; cost the order without this model",
                                     model.where(), cause));
}

// Rounding leaves a hair under nothing where nothing is lost.
double not_below_nothing(double value) {
    return std::max(value, 0.0);
}

void add_converters(MeasuredRun& result, const RunBasis& basis) {
    const double gsm = basis.row.order->layout->board.grammage_gsm;
    const auto& order = basis.order;
    for (std::size_t k = 1; k <= order.last_step(); ++k)
        for (const auto& run : basis.actual.steps[k - 1]) {
            result.fed[k] += run.pieces.fed;
            result.good[k] += run.pieces.good;
            lose(result, basis, "setup", k, run::mass(run.areas.setup, gsm));
            lose(result, basis, "rejects", k, run::mass(run.areas.rejects, gsm));
            lose(result, basis, "cut-out", k, not_below_nothing(run::mass(run.areas.cut_out, gsm)));
            lose(result, basis, "surplus", k, run::mass(run.areas.surplus, gsm));
        }
    const std::size_t d = order.parting;
    if (d > 0 && d < order.last_step()) {
        const double left = not_below_nothing(basis.actual.went_on(d) - basis.actual.fed(d + 1));
        lose(result, basis, "surplus", d, run::mass(left * order.box_area_m2, gsm));
    }
    result.fed.back() = result.good.back() = basis.actual.boxes();
}

// Board of an area combined, with the paper and adhesive that it takes.
void add_web(MeasuredRun& result, const RunBasis& basis, double metres, double area_m2, double roll_loss) {
    result.web_length_m += metres;
    result.web_area_m2 += area_m2;
    const auto& plies = basis.row.order->layout->board.plies;
    double issued_kg = 0;
    double adhesive_gsm = 0;
    for (std::size_t p = 0; p < plies.size(); ++p) {
        const double kg = run::paper_issued(area_m2, plies[p].grammage_gsm, plies[p].take_up, roll_loss);
        result.issued_kg[p] += kg;
        issued_kg += kg;
        adhesive_gsm += plies[p].adhesive_gsm;
    }
    result.adhesive_kg += run::mass(area_m2, adhesive_gsm);
    lose(result, basis, "roll-ends", 0, issued_kg * roll_loss);
}

void add_web_losses(MeasuredRun& result, const RunBasis& basis, const WebAreas& areas) {
    const double gsm = basis.row.order->layout->board.grammage_gsm;
    // More sheets than full rows at the knife hold: then the two cannot be told apart.
    const bool is_one = areas.run_waste < 0;
    lose(result, basis, "side-trim", 0, not_below_nothing(run::mass(areas.side_trim, gsm)));
    lose(result, basis, "order-change", 0, run::mass(areas.order_change, gsm));
    lose(result, basis, "corrugator-run", 0, not_below_nothing(run::mass(is_one ? areas.run() : areas.run_waste, gsm)));
    lose(result, basis, "surplus", 0, is_one ? 0 : run::mass(areas.surplus, gsm));
}

}  // namespace

MeasuredRun converters_as_posted(const RunBasis& basis, const engine::Allowances& allowed) {
    MeasuredRun result = empty_run(basis);
    add_converters(result, basis);
    const auto& order = basis.order;
    const auto cut = production::web_cut(order, order.roll_width_mm, order.outs);
    const double good = basis.actual.good_sheets();
    const double metres =
        run::web_length(run::cuts(good, cut.outs) * cut.chop, allowed.run_waste[0], allowed.order_change_m);
    result.good[0] = good;
    add_web(result, basis, metres, metres * cut.roll_width, allowed.roll_loss);
    add_web_losses(result, basis, production::web_areas(cut, metres, allowed.order_change_m, good));
    return result;
}

MeasuredRun all_as_posted(const RunBasis& basis) {
    MeasuredRun result = empty_run(basis);
    add_converters(result, basis);
    for (const auto& run : basis.actual.web) {
        result.good[0] += run.good_sheets;
        add_web(result, basis, run.metres, run.combined_m2(), basis.order.find_corrugator(run.corrugator)->roll_loss);
        add_web_losses(result, basis, run.areas);
    }
    return result;
}

}  // namespace flutebook::services
