// The values of settings, read and checked: by date, then by what the setting varies by, then by steps of a need. What
// an order takes of them is chosen in three turns: with its date, its customer, board and style once for the order;
// with a ply's or a step's place for each row; with a number that another model may provide when that model has run.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "host/base/date.hpp"
#include "host/base/place.hpp"

namespace flutebook::contract {

/// A value from a number of the need on.
struct ValueStep {
    double from;  // in the need's unit
    double value;
    base::Place place;  // of the value; line 0 where it is the default
};

/// One value, or several by steps: the one of the largest key that is not above the need's number. Empty where nothing
/// was given and there is no default.
class SteppedValue {
public:
    SteppedValue() = default;
    /// The same at every number.
    SteppedValue(double value, const base::Place& place);
    /// Steps rise, and the first lies at or below every number that the need can have.
    explicit SteppedValue(std::vector<ValueStep> steps);

    [[nodiscard]] bool is_empty() const { return steps_.empty(); }
    [[nodiscard]] bool is_stepped() const { return steps_.size() > 1; }
    /// Of the need's number; not to be asked of an empty one.
    [[nodiscard]] const ValueStep& at(double number) const;
    /// The value, where it is not stepped.
    [[nodiscard]] double value() const { return steps_.front().value; }
    [[nodiscard]] const std::vector<ValueStep>& steps() const { return steps_; }

private:
    std::vector<ValueStep> steps_;
};

/// The values of a setting from one day on.
struct SettingTable {
    std::vector<std::string>
        keys;  // codes of papers, flutes, machines, boards and styles, names of choices; customers as given
    std::vector<SteppedValue> cells;  // as many: what is unnamed has the default, if there is one
    SteppedValue otherwise;           // of a plant setting the value; else of a liner, and of what is no key
    base::Place place;                // where the table was given; line 0 where it was not

    /// The cell of a key, else `otherwise`.
    [[nodiscard]] const SteppedValue& of(const std::string& key) const;
};

struct DatedTable {
    base::Date from;
    SettingTable table;
};

/// A request setting has no tables: it stands in OrderSettings::requested at `request_index`.
struct SettingValues {
    std::vector<DatedTable> tables;  // by date, rising
    bool is_dated = false;           // else the one table counts on every day
    std::size_t request_index = 0;

    /// Nothing before the first day.
    [[nodiscard]] const SettingTable* on(base::Date day) const;
    /// The one value that every order has, on every day and at every place; nothing where it differs.
    [[nodiscard]] std::optional<double> constant() const;
};

/// A value within its range, but outside what is usual.
struct UnusualValue {
    base::Place place;
    std::string text;  // "plugins.energy.power_price: unusual: found 14.8, usually 0.05 to 0.5 money/kWh"
};

/// By model, then by setting, in the order of the declarations.
using Settings = std::vector<std::vector<SettingValues>>;

/// What one order takes of one setting. Both point into Settings.
struct OrderSetting {
    const SettingTable* table = nullptr;  // of its date; null where nothing counts: of a request setting, or replaced
    const SteppedValue* value = nullptr;  // where the order alone decides it; else a ply, a step or a number does
};

/// What one order takes of all settings.
struct OrderSettings {
    std::vector<std::vector<OrderSetting>> chosen;  // by model, then by setting
    std::vector<SteppedValue> requested;            // by request_index
    std::vector<UnusualValue> unusual;              // that the request gives
};

}  // namespace flutebook::contract
