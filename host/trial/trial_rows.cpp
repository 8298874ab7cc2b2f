#include "host/trial/trial_rows.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

#include "host/catalogue/units.hpp"
#include "host/geometry/layout.hpp"
#include "host/trial/draws.hpp"
#include "host/trial/known_numbers.hpp"
#include "host/trial/made_order.hpp"

namespace flutebook::trial {
namespace {

using engine::Model;
using engine::Range;

constexpr std::size_t most_rows_of_an_order = 3;
// How far a range that was left open is used: nobody means 1e15 kg of varnish.
constexpr double plausible = 1e6;

// Inside the range, often near its lower end, where most numbers of a plant lie.
double inside(Draws& draws, Range range) {
    const double high = std::min(range.high, std::max(range.low, 0.0) + plausible);
    const double reach = high - range.low;
    if (!(reach > 0)) return range.low;
    const double share = draws.between(0.001, 0.999);
    return range.low + reach * (draws.one_in(2) ? share : share * share * share);
}

double drawn(Draws& draws, const engine::Setting& setting, Settings how) {
    if (!setting.is_required() && (how == Settings::by_default || draws.one_in(2))) return setting.initial;
    if (!setting.choices.empty()) return draws.whole(setting.range.low, setting.range.high);
    return inside(draws, setting.range);
}

// A need as it is filled: from a known name, by a conversion, or drawn.
struct Filling {
    std::optional<std::size_t> known;
    catalogue::Conversion conversion;
};

class RowMaker {
public:
    RowMaker(const Model& model, Settings settings) : model_(model), settings_(settings) {
        for (const engine::Name& need : model.needs) {
            Filling made;
            made.known = known_place(need);
            if (made.known) made.conversion = *catalogue::conversion(known_names()[*made.known].unit, need.unit);
            fillings_.push_back(made);
        }
    }

    // Nothing where a fact of the row lies outside the range that the model declares for it.
    std::optional<TrialRow> make(Draws& draws, const engine::Row& row) const {
        TrialRow made;
        made.shape = {row.plies(), row.steps()};
        made.known = known_values(row);
        for (std::size_t n = 0; n < model_.needs.size(); ++n) {
            const engine::Name& need = model_.needs[n];
            auto& values = made.needs.emplace_back(made.shape.extent(need.axis));
            for (std::size_t i = 0; i < values.size(); ++i) {
                values[i] = fillings_[n].known ? fillings_[n].conversion(made.known[*fillings_[n].known][i])
                                               : inside(draws, need.range);
                if (!need.range.holds(values[i])) return std::nullopt;
            }
        }
        for (const engine::Setting& setting : model_.settings) {
            auto& values = made.settings.emplace_back(made.shape.extent(axis_of(setting.varies_by)));
            for (double& value : values) value = drawn(draws, setting, settings_);
        }
        return made;
    }

private:
    const Model& model_;
    Settings settings_;
    std::vector<Filling> fillings_;
};

void add_rows(std::vector<TrialRow>& rows, Draws& draws, const RowMaker& maker, const MadeOrder& made,
              const std::string& called) {
    const geometry::Layout layout = geometry::lay_out(made.plant, made.request);
    const std::size_t count = std::min(layout.candidates.size(), most_rows_of_an_order);
    for (std::size_t i = 0; i < count; ++i) {
        const geometry::Candidate& candidate = draws.pick(layout.candidates);
        const engine::Order order{&made.plant, &made.request, &layout, draws.pick(made.request.quantities), {}};
        auto row = maker.make(draws, {&order, &candidate});
        if (!row) continue;
        row->name = fmt::format("{}, {} by {}", called, order.quantity, geometry::name_of(candidate));
        rows.push_back(std::move(*row));
    }
}

}  // namespace

std::vector<TrialRow> make_rows(const Model& model, std::uint64_t seed, std::size_t orders, Settings settings) {
    const RowMaker maker(model, settings);
    Draws draws(seed);
    std::vector<TrialRow> rows;
    for (std::size_t i = 0; i < orders; ++i) {
        const std::uint64_t own_seed = draws.seed();
        add_rows(rows, draws, maker, make_order(own_seed), fmt::format("made order {} of seed {}", i + 1, seed));
    }
    return rows;
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

std::optional<std::size_t> known_place(const engine::Name& need) {
    const auto& all = known_names();
    const auto found = std::find_if(all.begin(), all.end(), [&](const KnownName& known) {
        return known.name == need.name && known.axis == need.axis && catalogue::conversion(known.unit, need.unit);
    });
    return found == all.end() ? std::nullopt : std::optional(static_cast<std::size_t>(found - all.begin()));
}

}  // namespace flutebook::trial
