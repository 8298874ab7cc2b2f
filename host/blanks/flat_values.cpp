// Names get their values in turn: dimensions, caliper, allowances, what the style asks for; a piece adds its `let`.
#include "host/blanks/flat_values.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "host/base/errors.hpp"
#include "host/base/inches.hpp"
#include "host/base/quoted_text.hpp"
#include "host/box_styles/style_sums.hpp"

namespace flutebook::blanks {

using box_styles::Sum;

StyleValues::StyleValues(const box_styles::Style& style, const StyleSize& size) : style_(style), size_(size) {
    values_.set("L", size.inside_mm[0]);
    values_.set("B", size.inside_mm[1]);
    values_.set("H", size.inside_mm[2]);
    values_.set("t", size.caliper_mm);
    values_.set("in", base::mm_of_inch);
    add_allowances();
    add_asks();
}

std::string StyleValues::allowance_words(const char* name) const {
    if (size_.allowance == nullptr) return fmt::format("`{}`", name);
    return fmt::format("`{}` of flute {} ({})", name, base::shown(size_.allowance->flutes),
                       base::place_text(size_.allowance->places, name, {"flutes.yaml"}));
}

void StyleValues::add_allowances() {
    const plant::Allowance* allowance = size_.allowance;
    if (allowance == nullptr) return;
    values_.set("panel", allowance->panel_mm);
    values_.set("depth", allowance->depth_mm);
    values_.set("flap", allowance->flap_mm);
    values_.set("joint", allowance->joint_mm);
    values_.set("tab", allowance->tab_mm);
    values_.set("slot", allowance->slot_mm);
    for (const auto& further : allowance->further) values_.set(further.name, further.mm);
}

void StyleValues::add_asks() {
    for (const auto& ask : style_.asks) {
        const auto given = std::find_if(size_.measures.begin(), size_.measures.end(),
                                        [&](const auto& measure) { return measure.first == ask.name; });
        const bool is_given = given != size_.measures.end();
        const double value = is_given ? given->second : number(ask.initial);
        const double low = number(ask.low), high = number(ask.high);
        // Sums of decimals are wrong by less than this.
        constexpr double hair = 1e-9;
        if (value < low - hair || value > high + hair)
            refuse(ask.initial.place, fmt::format("measure {} is out of its range: found {}{}, expected {} to {} ({})",
                                                  base::shown(ask.name), value, is_given ? "" : " where it is left out",
                                                  low, high, ask.says));
        values_.set(ask.name, value);
    }
}

void StyleValues::add(const std::vector<box_styles::NamedSum>& sums) {
    for (const auto& sum : sums) values_.set(sum.name, number(sum.sum));
}

double StyleValues::number(const Sum& sum) const {
    const auto value = fields::value_of_sum(sum.text, values_);
    if (const double* number = std::get_if<double>(&value)) return *number;
    const auto& why = std::get<fields::Problem>(value).text;
    refuse(sum.place, fmt::format("{} cannot be worked out at this size: {}{}", base::shown(sum.text), why,
                                  size_.allowance == nullptr ? "; the board has no allowances" : ""));
}

double StyleValues::length(const Sum& sum) const {
    const double value = number(sum);
    if (std::abs(value) > box_styles::longest_length_mm)
        refuse(sum.place, fmt::format("a length above {} mm: found {} mm for {}", box_styles::longest_length_mm, value,
                                      base::shown(sum.text)));
    return value;
}

double StyleValues::positive_length(const Sum& sum) const {
    const double value = length(sum);
    if (!(value >= box_styles::shortest_length_mm))
        refuse(sum.place, fmt::format("a length below {} mm: found {} mm for {}; ask for a larger box",
                                      box_styles::shortest_length_mm, value, base::shown(sum.text)));
    return value;
}

double StyleValues::count(const Sum& sum, double most) const {
    const double value = number(sum);
    const double whole = std::round(value);
    if (std::abs(value - whole) > 1e-9 || whole < 0 || whole > most)
        refuse(sum.place, fmt::format("not a count: found {} for {}, expected a whole number from 0 to {}", value,
                                      base::shown(sum.text), most));
    return whole;
}

void StyleValues::refuse(const base::Place& place, const std::string& what) const {
    const auto where = size_.where.empty() ? std::string() : size_.where + ": ";
    throw InputError(InputError::Whose::request, {fmt::format("{}{}; style {}, {}", where, what,
                                                              base::shown(style_.code), base::place_text(place))});
}

void StyleValues::check_requirements() const {
    for (const auto& requirement : style_.requirements)
        if (number(requirement.sum) < 0)
            refuse(requirement.sum.place,
                   fmt::format("{}: found {} below 0", requirement.text, base::shown(requirement.sum.text)));
}

}  // namespace flutebook::blanks
