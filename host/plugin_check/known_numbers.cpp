#include "host/plugin_check/known_numbers.hpp"

#include <algorithm>
#include <flutebook/run.hpp>
#include <numeric>

#include "host/engine/costing/columns.hpp"
#include "host/engine/facts.hpp"

namespace flutebook::plugin_check {
namespace {

using contract::Axis;
using engine::Row;

constexpr double minutes_per_hour = 60;

double metres(double mm) {
    return mm / 1000;
}

// Calculates the converters, from the last to the first; returns the pieces that the corrugator must deliver.
double convert(const Row& row, RunNumbers& result) {
    const geometry::Route& route = *row.candidate->route;
    const double box = row.order->layout->blank.area_m2;
    const double sheet = row.candidate->sheet_area_m2;
    double asked = row.order->quantity;
    for (std::size_t k = route.last_step(); k > 0; --k) {
        const plant::Converter& machine = *route.converters[k - 1];
        const bool parts = k == route.parting;
        const double taken = asked * (parts ? box : 0);
        if (parts) asked = run::sheets_for(asked, row.candidate->ups);
        result.good[k] = asked;
        result.fed[k] = run::fed(asked, machine.run_waste, machine.setup_sheets);
        result.hours[k] = result.fed[k] / machine.speed_per_h;
        const double lost = (result.fed[k] - asked) * (k <= route.parting ? sheet : box);
        const double area = lost + (parts ? asked * sheet - taken : 0);
        result.scrap_kg[k] = std::max(0.0, run::mass(area, row.order->layout->board.grammage_gsm));
        asked = result.fed[k];
    }
    return asked;
}

}  // namespace

RunNumbers run_numbers(const Row& row) {
    const geometry::Candidate& by = *row.candidate;
    const geometry::BoardMake& board = row.order->layout->board;
    RunNumbers result;
    for (auto* column : {&result.fed, &result.good, &result.scrap_kg, &result.hours}) column->resize(row.steps());
    result.fed.back() = result.good.back() = row.order->quantity;

    const double asked = convert(row, result);
    const bool is_bare = by.route->converters.empty();
    const double sheets = is_bare ? run::sheets_for(asked, by.ups) : asked;
    const double length = run::web_length(run::cuts(sheets, by.outs) * metres(by.chop_mm), by.corrugator->run_waste,
                                          by.corrugator->order_change_m);
    result.good[0] = sheets;
    result.web_length_m = length;
    result.web_area_m2 = length * metres(by.roll_width_mm);
    result.hours[0] = length / (minutes_per_hour * (board.media == 1 ? by.corrugator->speed_single_m_min
                                                                     : by.corrugator->speed_double_m_min));
    double adhesive_gsm = 0;
    for (const geometry::PlyMake& ply : board.plies) {
        result.issued_kg.push_back(
            run::paper_issued(result.web_area_m2, ply.grammage_gsm, ply.take_up, by.corrugator->roll_loss));
        adhesive_gsm += ply.adhesive_gsm;
    }
    result.adhesive_kg = run::mass(result.web_area_m2, adhesive_gsm);
    const double came_in = result.adhesive_kg + std::accumulate(result.issued_kg.begin(), result.issued_kg.end(), 0.0);
    const double left = is_bare ? row.order->quantity * row.order->layout->blank.area_m2 : sheets * by.sheet_area_m2;
    result.scrap_kg[0] = std::max(0.0, came_in - run::mass(left, board.grammage_gsm));
    return result;
}

const std::vector<KnownName>& known_names() {
    static const std::vector<KnownName> all = [] {
        std::vector<KnownName> result;
        for (const engine::Fact& fact : engine::facts())
            result.push_back({fact.name.name, fact.name.unit, fact.name.axis, fact.name.range, fact.is_replaceable});
        const contract::Range any{0, 1e15};
        for (const KnownName& name : {KnownName{"run.fed", "1", Axis::step, any, true},
                                      {"run.good", "1", Axis::step, any, true},
                                      {"scrap.mass", "kg", Axis::step, any, true},
                                      {"run.hours", "h", Axis::step, any, true},
                                      {"paper.issued", "kg", Axis::ply, any, true},
                                      {"web.length", "m", Axis::order, any, true},
                                      {"web.area", "m2", Axis::order, any, true},
                                      {"adhesive.dry", "kg", Axis::order, any, true}})
            result.push_back(name);
        return result;
    }();
    return all;
}

std::vector<std::vector<double>> known_values(const Row& row) {
    const engine::Shape shape{row.plies(), row.steps()};
    std::vector<std::vector<double>> result;
    for (const engine::Fact& fact : engine::facts()) {
        auto& values = result.emplace_back(shape.extent(fact.name.axis));
        for (std::size_t i = 0; i < values.size(); ++i) fact.fill({&row, 1}, i, &values[i]);
    }
    RunNumbers run = run_numbers(row);
    for (auto* column : {&run.fed, &run.good, &run.scrap_kg, &run.hours, &run.issued_kg})
        result.push_back(std::move(*column));
    for (const double one : {run.web_length_m, run.web_area_m2, run.adhesive_kg}) result.push_back({one});
    return result;
}

}  // namespace flutebook::plugin_check
