#include "host/drawings/shown_units.hpp"

#include <array>
#include <optional>

#include "host/base/inches.hpp"
#include "host/fields/units.hpp"
#include "host/geometry/refused.hpp"
#include "host/render/number_text.hpp"

namespace flutebook::drawings {

namespace {

using plant::Plant;
using plant::Units;

// A unit of the models and its us counterpart, as the units library spells it and as people do.
struct Counterpart {
    const char *metric, *us, *name;
};
constexpr std::array<Counterpart, 14> counterparts{{{"mm", "in", "in"},
                                                    {"m", "ft", "ft"},
                                                    {"km", "mile", "mi"},
                                                    {"m2", "ft2", "ft2"},
                                                    {"kg", "lb", "lb"},
                                                    {"t", "short_ton", "short ton"},
                                                    {"t km", "short_ton mile", "ton mi"},
                                                    {"g/m2", "lb/MSF", "lb/MSF"},
                                                    {"m/min", "ft/min", "ft/min"},
                                                    {"money/kg", "money/lb", "money/lb"},
                                                    {"money/m", "money/ft", "money/ft"},
                                                    {"money/m2", "money/MSF", "money/MSF"},
                                                    {"money/t", "money/short_ton", "money/ton"},
                                                    {"money/t/km", "money/short_ton/mile", "money/ton/mi"}}};

ShownUnit unit_shown_as(const char* from, const char* to, const char* name, int decimals) {
    return {name, fields::conversion(from, to).value_or(fields::Conversion{}).scale, decimals};
}

std::string in_currency(std::string unit, const std::string& currency) {
    static const std::string prefix = "money";
    if (unit.rfind(prefix, 0) == 0) unit.replace(0, prefix.size(), currency);
    return unit;
}

// An exact amount over an exact quotient: scaling the cost per m2, which is rounded, would show 93 times its error.
Money cost_over(Money cost, double shipped, Money as_quoted, Units units) {
    if (units == Units::metric) return as_quoted;
    return Money::of(cost.to_double(), 1 / shipped).value_or(as_quoted);
}

}  // namespace

std::string ShownUnit::text(double value) const {
    return render::number_text((*this)(value), decimals) + (name.empty() ? "" : " " + name);
}

ShownUnits::ShownUnits(const Plant& plant) : units(plant.units), currency(plant.currency) {
    const bool us = units == Units::us;
    length_unit = us ? "in" : "mm";
    web_length = us ? unit_shown_as("m", "ft", "ft", 1) : unit_shown_as("m", "m", "m", 1);
    area = us ? unit_shown_as("m2", "ft2", "ft2", 4) : unit_shown_as("m2", "m2", "m2", 4);
    mass = us ? unit_shown_as("kg", "lb", "lb", 2) : unit_shown_as("kg", "kg", "kg", 2);
    grammage = us ? unit_shown_as("g/m2", "lb/MSF", "lb/MSF", 2) : unit_shown_as("g/m2", "g/m2", "g/m2", 1);
    cost_area = us ? unit_shown_as("m2", "MSF", "MSF", 4) : unit_shown_as("m2", "m2", "m2", 4);
    cost_mass = us ? unit_shown_as("t", "short_ton", "short ton", 4) : unit_shown_as("t", "t", "tonne", 4);
}

std::string ShownUnits::length_number(double length_mm) const {
    if (units == Units::us) return base::inches_to_sixteenths(length_mm / base::mm_of_inch);
    const std::string with_unit = geometry::length_text(length_mm, units);
    return with_unit.substr(0, with_unit.find(' '));
}

std::string ShownUnits::length(double length_mm) const {
    return length_number(length_mm) + " " + length_unit;
}

std::string ShownUnits::exact_length(double length_mm) const {
    return render::with_shown_mark(geometry::length_text(length_mm, units));
}

std::string ShownUnits::lengths(const std::vector<double>& lengths_mm) const {
    std::string result;
    for (std::size_t i = 0; i < lengths_mm.size(); ++i) result += (i == 0 ? "" : " x ") + length_number(lengths_mm[i]);
    return result.empty() ? result : result + " " + length_unit;
}

ShownUnit ShownUnits::of(const std::string& unit) const {
    constexpr int plain_decimals = 6;
    if (unit == "1") return {"", 1, plain_decimals};
    if (units == Units::us)
        for (const Counterpart& counterpart : counterparts)
            if (unit == counterpart.metric) {
                ShownUnit shown = unit_shown_as(counterpart.metric, counterpart.us, counterpart.name, plain_decimals);
                shown.name = in_currency(shown.name, currency);
                return shown;
            }
    return {in_currency(unit, currency), 1, plain_decimals};
}

Money ShownUnits::cost_per_area(const answers::Quote& quote) const {
    return cost_over(quote.cost, cost_area(quote.quantity * quote.blank.area_m2), quote.cost_per_m2, units);
}

Money ShownUnits::cost_per_mass(const answers::Quote& quote) const {
    return cost_over(quote.cost, cost_mass(quote.mass.product_kg / 1000), quote.cost_per_tonne, units);
}

}  // namespace flutebook::drawings
