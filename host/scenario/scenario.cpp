#include "host/scenario/scenario.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <cmath>
#include <utility>

#include "host/geometry/sheet.hpp"
#include "ledger/values/error.hpp"

namespace flutebook::scenario {

namespace {

bool is_same_length(double left_mm, double right_mm) {
    return std::abs(left_mm - right_mm) < geometry::same_length_mm;
}

bool is_way_of(const geometry::Candidate& way, const orders::OrderRecord& order) {
    return way.corrugator->code == order.corrugator && is_same_length(way.roll_width_mm, order.roll_width_mm) &&
           way.outs == order.outs && way.ups == order.ups && is_same_length(way.chop_mm, order.chop_mm) &&
           is_same_length(way.slit_mm, order.slit_mm) && way.route_codes() == order.route;
}

const geometry::Candidate& way_of(const geometry::Layout& layout, const orders::OrderRecord& order) {
    for (const auto& way : layout.candidates)
        if (is_way_of(way, order)) return way;
    throw LedgerError(LedgerError::Kind::refused,
                      fmt::format("order {}: the layout of quote {} cannot be made again from the files it was saved "
                                  "with; it was saved by another version of flutebook: cost it with that one",
                                  order.number, order.quote));
}

// The plant has every machine of the scenario.
template <typename Machine>
const Machine* known(const Machine* machine) {
    assert(machine != nullptr);
    return machine;
}

geometry::Route route_with(geometry::Route route, const plant::Plant& plant, const std::vector<StepMachine>& machines) {
    for (const auto& [step, code] : machines)
        if (step > 0) route.converters[step - 1] = known(plant.find_converter(code));
    return route;
}

geometry::Candidate way_with(geometry::Candidate way, const plant::Plant& plant, const Overrides& overrides) {
    for (const auto& [step, code] : overrides.machines)
        if (step == 0) way.corrugator = known(plant.find_corrugator(code));
    if (overrides.web) {
        way.roll_width_mm = overrides.web->roll_width_mm;
        way.outs = overrides.web->outs;
        way.trim_mm = way.roll_width_mm - way.outs * way.slit_mm;
    }
    return way;
}

// The style of the request has the piece that the record names.
engine::PieceOfSet piece_of(const plant::Plant& plant, const Quoted& quoted, const engine::ClassCosts& others) {
    const auto pieces = blanks::pieces_of(plant, quoted.request);
    engine::PieceOfSet result{0, pieces.size(), others};
    if (quoted.order.piece.empty()) return result;
    while (result.index < pieces.size() && pieces[result.index].name != quoted.order.piece) ++result.index;
    if (result.index < pieces.size()) return result;
    throw LedgerError(LedgerError::Kind::refused,
                      fmt::format("order {}: style {} of quote {} has no piece {} in the files it was saved with; cost "
                                  "it with the version of flutebook that saved it",
                                  quoted.order.number, quoted.request.style, quoted.order.quote, quoted.order.piece));
}

// Who refuses is known where the row is refused as a quote would be, too.
std::string why_refused(const engine::Engine& engine, const engine::Row& row) {
    const auto outcome = engine.cost({&row, 1}, 1).front();
    if (outcome.state != engine::Outcome::State::refused) return "a model refuses it";
    const contract::Model& model = engine.graph().models[outcome.model];
    return fmt::format("model {} refuses it: {}", model.id, model.reasons[outcome.reason]);
}

}  // namespace

Scenario::Scenario(const engine::Engine& engine, const Quoted& quoted, Overrides overrides)
    : engine_(engine),
      run_(std::move(overrides.run)),
      number_(quoted.order.number),
      plant_(with(quoted.plant, overrides.plant)),
      piece_(piece_of(plant_, quoted, overrides.others)),
      layout_(geometry::lay_out(plant_, quoted.request, piece_.index)),
      route_(route_with(*way_of(layout_, quoted.order).route, plant_, overrides.machines)),
      candidate_(way_with(way_of(layout_, quoted.order), plant_, overrides)),
      order_(engine.order(plant_, quoted.request, layout_, overrides.quantity, piece_)) {
    candidate_.route = &route_;
    if (overrides.trim) order_.trim = *overrides.trim;
}

engine::Costing Scenario::cost() const {
    auto costing = run_ ? engine_.cost_in_full(row(), *run_) : engine_.cost_in_full(row());
    if (costing) return std::move(*costing);
    throw LedgerError(LedgerError::Kind::refused,
                      fmt::format("order {}: cannot be costed as it was made, {} of them: {}; ask the model's author",
                                  number_, order_.quantity, why_refused(engine_, row())));
}

}  // namespace flutebook::scenario
