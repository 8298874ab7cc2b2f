#include "host/contract/setting_values.hpp"

#include <algorithm>
#include <cassert>
#include <limits>
#include <utility>

namespace flutebook::contract {
namespace {

// A number that misses a key by what sums of doubles lose still reaches it.
constexpr double step_tolerance = 1e-9;

constexpr double lowest = std::numeric_limits<double>::lowest();

}  // namespace

SteppedValue::SteppedValue(double value, const base::Place& place) : steps_{{lowest, value, place}} {}

SteppedValue::SteppedValue(std::vector<ValueStep> steps) : steps_(std::move(steps)) {}

const ValueStep& SteppedValue::at(double number) const {
    assert(!steps_.empty());
    const auto above = std::find_if(steps_.begin() + 1, steps_.end(),
                                    [&](const ValueStep& step) { return step.from > number + step_tolerance; });
    return *(above - 1);
}

const SteppedValue& SettingTable::of(const std::string& key) const {
    const auto found = std::find(keys.begin(), keys.end(), key);
    return found == keys.end() ? otherwise : cells[static_cast<std::size_t>(found - keys.begin())];
}

const SettingTable* SettingValues::on(base::Date day) const {
    if (!is_dated) return tables.empty() ? nullptr : &tables.front().table;
    const auto later =
        std::find_if(tables.begin(), tables.end(), [&](const DatedTable& dated) { return dated.from > day; });
    return later == tables.begin() ? nullptr : &(later - 1)->table;
}

std::optional<double> SettingValues::constant() const {
    if (is_dated || tables.empty()) return std::nullopt;
    const SettingTable& table = tables.front().table;
    if (table.otherwise.is_empty() || table.otherwise.is_stepped()) return std::nullopt;
    const double value = table.otherwise.value();
    const bool is_constant = std::all_of(table.cells.begin(), table.cells.end(), [&](const SteppedValue& cell) {
        return !cell.is_empty() && !cell.is_stepped() && cell.value() == value;
    });
    return is_constant ? std::optional(value) : std::nullopt;
}

}  // namespace flutebook::contract
