#include "host/contract/scrap_prices.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "host/fields/units.hpp"
#include "host/plant/unusual_numbers.hpp"

namespace flutebook::contract {
namespace {

constexpr const char* price_of_paper = "money/t";

// Null where no paper has a price above 0.
const plant::Paper* cheapest_paper(const plant::Plant& plant) {
    const plant::Paper* result = nullptr;
    for (const plant::Paper& paper : plant.papers)
        if (plant::newest_price(paper) > 0 &&
            (result == nullptr || plant::newest_price(paper) < plant::newest_price(*result)))
            result = &paper;
    return result;
}

bool recovers(const Model& model) {
    return std::any_of(model.lines.begin(), model.lines.end(),
                       [](const Line& line) { return line.cost_class == CostClass::recovery; });
}

// What the plant's file gives, of all days, keys and steps.
std::vector<ValueStep> given_values(const SettingValues& values) {
    std::vector<ValueStep> result;
    const auto add = [&](const SteppedValue& value) {
        for (const ValueStep& step : value.steps()) {
            const bool is_known = std::any_of(result.begin(), result.end(), [&](const ValueStep& other) {
                return base::place_text(other.place) == base::place_text(step.place);
            });
            if (step.place.line != 0 && !is_known) result.push_back(step);
        }
    };
    for (const DatedTable& dated : values.tables) {
        add(dated.table.otherwise);
        for (const SteppedValue& cell : dated.table.cells) add(cell);
    }
    return result;
}

}  // namespace

std::vector<UnusualValue> scrap_dearer_than_paper(const plant::Plant& plant, const std::vector<Model>& models,
                                                  const Settings& settings) {
    std::vector<UnusualValue> result;
    const plant::Paper* cheapest = cheapest_paper(plant);
    if (cheapest == nullptr) return result;
    const double paper = plant::newest_price(*cheapest);
    for (std::size_t m = 0; m < models.size(); ++m) {
        if (!recovers(models[m])) continue;
        for (std::size_t s = 0; s < models[m].settings.size(); ++s) {
            const Setting& setting = models[m].settings[s];
            const auto to_paper =
                setting.unit.starts_with("money") ? fields::conversion(setting.unit, price_of_paper) : std::nullopt;
            if (!to_paper) continue;
            for (const ValueStep& value : given_values(settings[m][s]))
                if ((*to_paper)(value.value) > paper)
                    result.push_back({value.place, fmt::format("plugins.{}.{}: dearer than paper: found {} {}, where "
                                                               "the cheapest paper, {}, costs {} a tonne; is it meant?",
                                                               models[m].id, setting.name, value.value, setting.unit,
                                                               cheapest->code, paper)});
        }
    }
    return result;
}

}  // namespace flutebook::contract
