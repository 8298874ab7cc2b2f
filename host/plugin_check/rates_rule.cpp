// The rule that a rate is in its line's unit: a price in money/t on kilograms would cost a thousand times too much.
//
// A model does not tell where a rate comes from. But a rate that equals one of its inputs in every row, whatever the
// rows are, is that input, and then their units must be the same.
#include <fmt/format.h>

#include <set>
#include <string>
#include <vector>

#include "host/fields/units.hpp"
#include "host/plugin_check/plugin_under_test.hpp"
#include "host/plugin_check/row_checks.hpp"
#include "host/plugin_check/rule_groups.hpp"

namespace flutebook::plugin_check {
namespace {

using contract::Axis;
using contract::Model;

constexpr std::size_t enough_rates = 3;  // that differ, before equality is no chance

// A need or a setting, and whether the rates of a line were equal to it so far.
struct RateSource {
    std::string name, unit;
    Axis axis;
    bool is_setting;
    std::size_t at;
    bool is_equal = true;

    [[nodiscard]] double in(const TrialRow& row, std::size_t index) const {
        const auto& values = is_setting ? row.settings[at] : row.needs[at];
        return values[axis == Axis::order ? 0 : index];
    }
};

std::vector<RateSource> sources_of(const Model& model, Axis axis) {
    std::vector<RateSource> result;
    for (std::size_t s = 0; s < model.settings.size(); ++s) {
        const contract::Setting& setting = model.settings[s];
        const Axis its_axis = axis_of(setting.varies_by);
        if (setting.choices.empty() && (its_axis == Axis::order || its_axis == axis))
            result.push_back({setting.name, setting.unit, its_axis, true, s});
    }
    for (std::size_t n = 0; n < model.needs.size(); ++n)
        if (model.needs[n].axis == Axis::order || model.needs[n].axis == axis)
            result.push_back({model.needs[n].name, model.needs[n].unit, model.needs[n].axis, false, n});
    return result;
}

// The place of a line's first quantity and of its first rate in RowOutput::numbers.
struct LinePlaces {
    std::size_t quantity, rate;
};

LinePlaces places_of(const Model& model, engine::Shape shape, std::size_t line) {
    LinePlaces result{0, 0};
    for (const auto& provide : model.provides) result.quantity += shape.extent(provide.axis);
    result.rate = result.quantity;
    for (const auto& each : model.lines) result.rate += shape.extent(each.axis);
    for (std::size_t l = 0; l < line; ++l) {
        result.quantity += shape.extent(model.lines[l].axis);
        result.rate += shape.extent(model.lines[l].axis);
    }
    return result;
}

// Compares one row's rates of a line with every source.
void compare(const Model& model, std::size_t line, const TrialRow& row, const RowOutput& written,
             std::vector<RateSource>& sources, std::set<double>& rates) {
    const LinePlaces places = places_of(model, row.shape, line);
    for (std::size_t i = 0; written.refused == 0 && i < row.shape.extent(model.lines[line].axis); ++i) {
        const double rate = written.numbers[places.rate + i];
        if (written.numbers[places.quantity + i] == 0 || rate == 0) continue;
        rates.insert(rate);
        for (RateSource& source : sources) source.is_equal = source.is_equal && source.in(row, i) == rate;
    }
}

Violation wrong_unit(const contract::Line& line, const RateSource& source) {
    const auto same = fields::conversion(source.unit, line.rate_unit);
    if (same && same->is_identity()) return std::nullopt;
    return fmt::format(
        "charges {} at {}, which is in {}, as a rate in {}; declare the rate's unit, or convert the rate", line.name,
        source.name, source.unit, line.rate_unit);
}

}  // namespace

Violation try_rates(PluginUnderTest& plugin) {
    plugin.report().say("phase", "it evaluated");
    const Model& model = plugin.model();
    for (std::size_t l = 0; l < model.lines.size(); ++l) {
        std::vector<RateSource> sources = sources_of(model, model.lines[l].axis);
        std::set<double> rates;
        for (const Group& group : by_shape(plugin.rows())) {
            const std::vector<RowOutput> written = evaluate(model, group, usual_block);
            for (std::size_t r = 0; r < group.size(); ++r) compare(model, l, *group[r], written[r], sources, rates);
        }
        if (rates.size() < enough_rates) continue;
        for (const RateSource& source : sources)
            if (source.is_equal)
                if (auto found = wrong_unit(model.lines[l], source)) return found;
    }
    return std::nullopt;
}

}  // namespace flutebook::plugin_check
