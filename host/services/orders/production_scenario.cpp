#include "host/services/orders/production_scenario.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <cmath>

#include "host/geometry/sheet.hpp"
#include "ledger/values/error.hpp"

namespace flutebook::services {

namespace {

bool is_same_length(double left_mm, double right_mm) {
    return std::abs(left_mm - right_mm) < geometry::same_length_mm;
}

bool is_way_of(const geometry::Candidate& way, const orders::OrderRecord& order) {
    const auto& converters = way.route->converters;
    return way.corrugator->code == order.corrugator && is_same_length(way.roll_width_mm, order.roll_width_mm) &&
           way.outs == order.outs && way.ups == order.ups && is_same_length(way.chop_mm, order.chop_mm) &&
           is_same_length(way.slit_mm, order.slit_mm) &&
           std::equal(converters.begin(), converters.end(), order.route.begin(), order.route.end(),
                      [](const auto* machine, const std::string& code) { return machine->code == code; });
}

const geometry::Candidate& way_of(const geometry::Layout& layout, const orders::OrderRecord& order) {
    for (const auto& way : layout.candidates)
        if (is_way_of(way, order)) return way;
    throw LedgerError(LedgerError::Kind::refused,
                      fmt::format("order {}: the layout of quote {} cannot be made again from the files it was saved "
                                  "with; it was saved by another version of flutebook: cost it with that one",
                                  order.number, order.quote));
}

template <typename MachineAmount>
MachineAmount& machine_in(std::vector<MachineAmount>& machines, const std::string& code) {
    const auto found = std::find_if(machines.begin(), machines.end(),
                                    [&](const MachineAmount& machine) { return machine.code == code; });
    assert(found != machines.end() && "the quoted plant has every machine that ran");
    return *found;
}

}  // namespace

ProductionScenario::ProductionScenario(const engine::Engine& engine, const QuotedPlant& quoted,
                                       const orders::OrderRecord& order, double quantity)
    : plant_(quoted.plant),
      layout_(geometry::lay_out(plant_, quoted.request)),
      route_(*way_of(layout_, order).route),
      candidate_(way_of(layout_, order)),
      order_(engine.order(plant_, quoted.request, layout_, quantity)) {
    candidate_.route = &route_;
}

void ProductionScenario::run_on(std::size_t step, const std::string& machine, double setups) {
    if (step == 0) {
        auto& corrugator = machine_in(plant_.corrugators, machine);
        corrugator.order_change_min *= setups;
        candidate_.corrugator = &corrugator;
    } else {
        auto& converter = machine_in(plant_.converters, machine);
        converter.setup_min *= setups;
        route_.converters[step - 1] = &converter;
    }
}

void ProductionScenario::cut_web(double roll_width_mm, double outs) {
    candidate_.roll_width_mm = roll_width_mm;
    candidate_.outs = outs;
    candidate_.trim_mm = roll_width_mm - outs * candidate_.slit_mm;
}

void ProductionScenario::set_prices(const std::vector<double>& per_kg) {
    for (std::size_t p = 0; p < per_kg.size(); ++p) layout_.board.plies[p].price_per_kg = per_kg[p];
}

}  // namespace flutebook::services
