#include "host/plugin_check/trial_rows.hpp"

#include <fmt/format.h>
#include <flutebook/run.hpp>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <optional>
#include <utility>

#include "host/engine/costing/columns.hpp"
#include "host/engine/facts.hpp"
#include "host/fields/units.hpp"
#include "host/geometry/layout.hpp"
#include "host/plugin_check/generated_order.hpp"

namespace flutebook::plugin_check {
namespace {

using contract::Axis;
using contract::Model;
using contract::Range;
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
    double pieces = row.order->quantity;
    for (std::size_t k = route.last_step(); k > 0; --k) {
        const plant::Converter& machine = *route.converters[k - 1];
        const bool parts = k == route.parting;
        const double taken = pieces * (parts ? box : 0);
        if (parts) pieces = run::sheets_for(pieces, row.candidate->ups);
        result.good[k] = pieces;
        result.fed[k] = run::fed(pieces, machine.run_waste, machine.setup_sheets);
        result.hours[k] = result.fed[k] / machine.speed_per_h;
        const double lost = (result.fed[k] - pieces) * (k <= route.parting ? sheet : box);
        const double area = lost + (parts ? pieces * sheet - taken : 0);
        result.scrap_kg[k] = std::max(0.0, run::mass(area, row.order->layout->board.grammage_gsm));
        pieces = result.fed[k];
    }
    return pieces;
}

constexpr std::size_t most_rows_of_an_order = 3;
// The largest width of a range that is used: 1e15 kg of varnish is not plausible.
constexpr double plausible = 1e6;

double drawn_anywhere(Draws& draws, const contract::Setting& setting) {
    if (setting.initial && draws.one_in(4)) return *setting.initial;
    if (!setting.choices.empty()) return draws.whole(setting.range.low, setting.range.high);
    if (draws.one_in(4)) return setting.range.low;
    return draws.one_in(3) ? setting.range.high : inside(draws, setting.range);
}

double drawn(Draws& draws, const contract::Setting& setting, Settings how) {
    if (how == Settings::anywhere) return drawn_anywhere(draws, setting);
    if (setting.initial && (how == Settings::by_default || draws.one_in(2))) return *setting.initial;
    if (!setting.choices.empty()) return draws.whole(setting.range.low, setting.range.high);
    return inside(draws, setting.range);
}

// One order in four is of a piece of a set. Drawn apart, so that all else of a row is what its seed always gave.
engine::PieceOfSet draw_piece(std::uint64_t seed) {
    Draws draws(seed);
    engine::PieceOfSet result;
    if (!draws.one_in(4)) return result;
    result.pieces = static_cast<std::size_t>(draws.whole(2, 8));
    result.index = draws.index(result.pieces);
    return result;
}

// What other models charge is drawn by class, and added up as the host adds it up.
void draw_costs(Draws& draws, std::vector<std::vector<double>>& known) {
    std::vector<double>& sum = known[engine::fact_index(engine::cost_names.back())];
    std::fill(sum.begin(), sum.end(), 0.0);
    for (std::size_t c = 0; c + 1 < engine::cost_names.size(); ++c) {
        const bool is_income = c == static_cast<std::size_t>(contract::CostClass::recovery);
        std::vector<double>& costs = known[engine::fact_index(engine::cost_names[c])];
        for (std::size_t i = 0; i < costs.size(); ++i) {
            costs[i] = draws.whole(0, is_income ? 5e5 : 5e6) / (is_income ? -1e4 : 1e4) * draws.whole(1, 100);
            sum[i] += costs[i];
        }
    }
}

}  // namespace

RunNumbers run_numbers(const Row& row) {
    const geometry::Candidate& by = *row.candidate;
    const geometry::BoardMake& board = row.order->layout->board;
    RunNumbers result;
    for (auto* column : {&result.fed, &result.good, &result.scrap_kg, &result.hours}) column->resize(row.steps());
    result.fed.back() = result.good.back() = row.order->quantity;

    const double pieces = convert(row, result);
    const bool is_bare = by.route->converters.empty();
    const double sheets = is_bare ? run::sheets_for(pieces, by.ups) : pieces;
    const plant::TrimPolicy& trim = row.order->trim;
    const double good_length = plant::web_share(trim, by.roll_width_mm - by.trim_mm, by.roll_width_mm) *
                               (run::cuts(sheets, by.outs) * metres(by.chop_mm));
    const double length =
        run::web_length(good_length, by.corrugator->run_waste, by.corrugator->order_change_m * trim.changes);
    result.good[0] = sheets;
    result.web_length_m = length;
    result.web_area_m2 = length * metres(by.roll_width_mm);
    const double made_here = by.corrugator->is_supplier ? 0 : 1;
    result.hours[0] =
        made_here * length /
        (minutes_per_hour * (board.media == 1 ? by.corrugator->speed_single_m_min : by.corrugator->speed_double_m_min));
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
        for (std::size_t i = 0; fact.fill != nullptr && i < values.size(); ++i) fact.fill({&row, 1}, i, &values[i]);
    }
    RunNumbers run = run_numbers(row);
    for (auto* column : {&run.fed, &run.good, &run.scrap_kg, &run.hours, &run.issued_kg})
        result.push_back(std::move(*column));
    for (const double one : {run.web_length_m, run.web_area_m2, run.adhesive_kg}) result.push_back({one});
    return result;
}

class TrialRows::Generator {
public:
    Generator(const Model& model, std::uint64_t seed, Settings settings)
        : model_(model), settings_(settings), draws_(seed), seed_(seed) {
        for (const contract::Name& need : model.needs) {
            Filling result;
            result.known = known_place(need);
            if (result.known) result.conversion = *fields::conversion(known_names()[*result.known].unit, need.unit);
            fillings_.push_back(result);
        }
    }

    void add_next(std::vector<TrialRow>& rows) {
        Draws draws(draws_.seed());
        ++order_;
        const GeneratedOrder result = make_order(draws.seed());
        const geometry::Layout layout = geometry::lay_out(result.plant, result.request);
        const std::size_t count = std::min(layout.candidates.size(), most_rows_of_an_order);
        for (std::size_t i = 0; i < count; ++i) {
            const geometry::Candidate& candidate = draws.pick(layout.candidates);
            engine::Order order{
                &result.plant,      &result.request, &layout, draws.pick(result.request.quantities), {}, {},
                result.request.trim};
            order.piece = draw_piece(seed_ + order_);
            auto row = make(draws, {&order, &candidate});
            if (!row) continue;
            row->name = fmt::format("generated order {} of seed {}, {} by {}", order_, seed_, order.quantity,
                                    geometry::name_of(candidate));
            rows.push_back(std::move(*row));
        }
    }

private:
    // How a need gets its value: from a known name, by a conversion, or at random.
    struct Filling {
        std::optional<std::size_t> known;
        fields::Conversion conversion;
    };

    // Nothing where a fact of the row is outside the range that the model declares for it.
    std::optional<TrialRow> make(Draws& draws, const engine::Row& row) const {
        TrialRow result{order_, "", {row.plies(), row.steps()}, {}, {}, {}};
        result.known = known_values(row);
        if (model_.needs_cost()) draw_costs(draws, result.known);
        for (std::size_t n = 0; n < model_.needs.size(); ++n) {
            const contract::Name& need = model_.needs[n];
            auto& values = result.needs.emplace_back(result.shape.extent(need.axis));
            for (std::size_t i = 0; i < values.size(); ++i) {
                values[i] = fillings_[n].known ? fillings_[n].conversion(result.known[*fillings_[n].known][i])
                                               : inside(draws, need.range);
                if (!need.range.holds(values[i])) return std::nullopt;
            }
        }
        for (const contract::Setting& setting : model_.settings) {
            auto& values = result.settings.emplace_back(result.shape.extent(axis_of(setting.varies_by)));
            for (double& value : values) value = drawn(draws, setting, settings_);
        }
        return result;
    }

    const Model& model_;
    Settings settings_;
    std::vector<Filling> fillings_;
    Draws draws_;
    std::uint64_t seed_;
    std::size_t order_ = 0;
};

TrialRows::TrialRows(const Model& model, std::uint64_t seed, Settings settings)
    : generator_(std::make_unique<Generator>(model, seed, settings)) {}

TrialRows::~TrialRows() = default;

std::vector<TrialRow> TrialRows::next(std::size_t orders) {
    std::vector<TrialRow> rows;
    for (std::size_t i = 0; i < orders; ++i) generator_->add_next(rows);
    return rows;
}

std::vector<TrialRow> make_rows(const Model& model, std::uint64_t seed, std::size_t orders, Settings settings) {
    return TrialRows(model, seed, settings).next(orders);
}

double inside(Draws& draws, Range range) {
    const double high = std::min(range.high, std::max(range.low, 0.0) + plausible);
    const double reach = high - range.low;
    if (!(reach > 0)) return range.low;
    const double share = draws.between(0.001, 0.999);
    return range.low + reach * (draws.one_in(2) ? share : share * share * share);
}

std::vector<Group> by_shape(const std::vector<TrialRow>& rows) {
    std::vector<Group> groups;
    for (const TrialRow& row : rows) {
        const auto same = [&](const Group& group) { return group.front()->shape == row.shape; };
        const auto found = std::find_if(groups.begin(), groups.end(), same);
        (found == groups.end() ? groups.emplace_back() : *found).push_back(&row);
    }
    return groups;
}

std::optional<std::size_t> known_place(const contract::Name& need) {
    const auto& all = known_names();
    const auto found = std::find_if(all.begin(), all.end(), [&](const KnownName& known) {
        return known.name == need.name && known.axis == need.axis && fields::conversion(known.unit, need.unit);
    });
    return found == all.end() ? std::nullopt : std::optional(static_cast<std::size_t>(found - all.begin()));
}

}  // namespace flutebook::plugin_check
