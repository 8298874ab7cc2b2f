#include "host/plugin_check/trial_rows.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

#include "host/geometry/layout.hpp"
#include "host/plant/units.hpp"
#include "host/plugin_check/generated_order.hpp"
#include "host/plugin_check/known_numbers.hpp"

namespace flutebook::plugin_check {
namespace {

using contract::Model;
using contract::Range;

constexpr std::size_t most_rows_of_an_order = 3;
// The largest width of a range that is used: 1e15 kg of varnish is not plausible.
constexpr double plausible = 1e6;

double drawn_anywhere(Draws& draws, const contract::Setting& setting) {
    if (!setting.is_required() && draws.one_in(4)) return setting.initial;
    if (!setting.choices.empty()) return draws.whole(setting.range.low, setting.range.high);
    if (draws.one_in(4)) return setting.range.low;
    return draws.one_in(3) ? setting.range.high : inside(draws, setting.range);
}

double drawn(Draws& draws, const contract::Setting& setting, Settings how) {
    if (how == Settings::anywhere) return drawn_anywhere(draws, setting);
    if (!setting.is_required() && (how == Settings::by_default || draws.one_in(2))) return setting.initial;
    if (!setting.choices.empty()) return draws.whole(setting.range.low, setting.range.high);
    return inside(draws, setting.range);
}

}  // namespace

class TrialRows::Generator {
public:
    Generator(const Model& model, std::uint64_t seed, Settings settings)
        : model_(model), settings_(settings), draws_(seed), seed_(seed) {
        for (const contract::Name& need : model.needs) {
            Filling result;
            result.known = known_place(need);
            if (result.known) result.conversion = *plant::conversion(known_names()[*result.known].unit, need.unit);
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
            const engine::Order order{
                &result.plant, &result.request, &layout, draws.pick(result.request.quantities), {}};
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
        plant::Conversion conversion;
    };

    // Nothing where a fact of the row is outside the range that the model declares for it.
    std::optional<TrialRow> make(Draws& draws, const engine::Row& row) const {
        TrialRow result{order_, "", {row.plies(), row.steps()}, {}, {}, {}};
        result.known = known_values(row);
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
        return known.name == need.name && known.axis == need.axis && plant::conversion(known.unit, need.unit);
    });
    return found == all.end() ? std::nullopt : std::optional(static_cast<std::size_t>(found - all.begin()));
}

}  // namespace flutebook::plugin_check
