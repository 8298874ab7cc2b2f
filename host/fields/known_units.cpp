#include "host/fields/known_units.hpp"

#include <algorithm>

namespace flutebook::fields {

const std::vector<std::string_view>& known_units() {
    static const std::vector<std::string_view> units = {
        "1",         "%",        "mm",      "m",         "m2",        "m3",           "km",
        "g",         "kg",       "t",       "kg/m3",     "g/m",       "g/m2",         "lb/MSF",
        "MSF",       "in",       "ft",      "lb",        "ft/min",    "min",          "h",
        "1/h",       "m/min",    "kW",      "kWh",       "kWh/t",     "kJ/kg",        "kJ/(kg K)",
        "kJ/kg/K",   "t km",     "degC",    "box",       "money",     "money/kg",     "money/t",
        "money/m",   "money/m2", "money/h", "money/box", "money/kWh", "money/(t km)", "money/t/km",
        "money/MSF", "money/lb", "money/km"};
    return units;
}

// The pound and the inch are exact (NIST Special Publication 811, 2008, appendix B.8); an MSF is 1000 square feet.
const std::vector<KnownConversion>& known_conversions() {
    static const std::vector<KnownConversion> conversions = {{"%", "1", 0.01},
                                                             {"in", "mm", 25.4},
                                                             {"ft/min", "m/min", 0.3048},
                                                             {"lb/MSF", "g/m2", 453.59237 / (1000 * 0.3048 * 0.3048)}};
    return conversions;
}

bool is_known_unit(std::string_view unit) {
    return std::find(known_units().begin(), known_units().end(), unit) != known_units().end();
}

std::optional<Conversion> known_conversion(std::string_view from, std::string_view to) {
    if (from == to && is_known_unit(from)) return Conversion{};
    for (const KnownConversion& known : known_conversions())
        if (known.from == from && known.to == to) return Conversion{known.scale, 0};
    return std::nullopt;
}

}  // namespace flutebook::fields
