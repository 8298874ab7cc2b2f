// What names mean is fixed by where they stand; what they come to is tried on three boxes, each at three sizes.
#include "host/box_styles/style_sums.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "host/base/inches.hpp"
#include "host/base/quoted_text.hpp"

namespace flutebook::box_styles {

namespace {

// Large, so that plain numbers beside lengths do not count; the last is a thousand times the one before.
constexpr std::array<double, 3> scales = {1, 1e6, 1e9};

// Growth above which a thousandfold box has no thousandfold length; an area has a million.
constexpr double too_steep = 3e4;

struct TriedBox {
    double length, width, height, caliper, allowance;
};

// Longer than wide, wider than long, and flat: min and max take either side in one of them.
constexpr std::array<TriedBox, 3> tried_boxes = {
    {{400, 300, 250, 4, 6}, {310, 430, 90, 2, 3}, {977, 211, 1613, 7, 11}}};

bool contains(const std::vector<std::string>& names, const std::string& name) {
    return std::find(names.begin(), names.end(), name) != names.end();
}

std::vector<std::string> names_of_cell(CellNames names) {
    switch (names) {
        case CellNames::none:
            break;
        case CellNames::width:
            return {"w"};
        case CellNames::width_and_depth:
            return {"w", "d"};
        case CellNames::cut_out:
            return {"w", "d", "i"};
    }
    return {};
}

std::optional<double> value_if_any(const std::string& text, const fields::NamedValues& values) {
    const auto value = fields::value_of_sum(text, values);
    if (const double* number = std::get_if<double>(&value)) return *number;
    return std::nullopt;
}

}  // namespace

SumScope::SumScope(const std::vector<std::string>& allowance_names) {
    lengths_ = {"L", "B", "H", "t"};
    lengths_.insert(lengths_.end(), allowance_names.begin(), allowance_names.end());
    names_ = lengths_;
    names_.emplace_back("in");  // stays as it is while the box grows, as 25.4 does
    for (const auto& box : tried_boxes) {
        Scales& values = boxes_.emplace_back();
        for (std::size_t i = 0; i < scales.size(); ++i) {
            for (const auto& name : names_) values[i].set(name, box.allowance * scales[i]);
            values[i].set("L", box.length * scales[i]);
            values[i].set("B", box.width * scales[i]);
            values[i].set("H", box.height * scales[i]);
            values[i].set("t", box.caliper * scales[i]);
            values[i].set("w", (box.width + box.height) / 3 * scales[i]);
            values[i].set("d", box.width / 3 * scales[i]);
            values[i].set("i", 1);
            values[i].set("in", base::mm_of_inch);
        }
    }
}

Sum SumScope::read(const fields::Field& field, SumUse use, CellNames cell_names) const {
    const auto given = field.given_text("a sum");
    return given ? checked(field, given->text, use, cell_names) : Sum{"", field.place()};
}

Sum SumScope::read_key(const fields::Field& field, SumUse use) const {
    return checked(field.about_key(), field.key(), use, CellNames::none);
}

Sum SumScope::checked(const fields::Field& field, const std::string& text, SumUse use, CellNames cell_names) const {
    Sum sum{text, field.place()};
    if (!knows_names(field, text, cell_names)) return {"", field.place()};
    check_size(field, text, use);
    return sum;
}

bool SumScope::knows_names(const fields::Field& field, const std::string& text, CellNames cell_names) const {
    const auto names = fields::names_in_sum(text);
    if (const auto* problem = std::get_if<fields::Problem>(&names)) {
        field.complain(problem->text);
        return false;
    }
    const auto of_cell = names_of_cell(cell_names);
    bool all_known = true;
    for (const auto& name : std::get<std::vector<std::string>>(names)) {
        if (contains(names_, name) || contains(of_cell, name)) continue;
        std::string known;
        for (const auto* list : {&names_, &of_cell})
            for (const auto& other : *list) known += (known.empty() ? "" : ", ") + other;
        field.complain(fmt::format("an unknown name: found {} in {}, expected one of {}", base::shown(name),
                                   base::shown(text), known));
        all_known = false;
    }
    return all_known;
}

void SumScope::check_size(const fields::Field& field, const std::string& text, SumUse use) const {
    const auto names = fields::names_in_sum(text);
    if (std::get<std::vector<std::string>>(names).empty()) {
        const auto value = fields::value_of_sum(text, {});
        if (const auto* problem = std::get_if<fields::Problem>(&value))
            return field.complain(fmt::format("{}: found {}", problem->text, base::shown(text)));
        const double number = std::get<double>(value);
        if (use == SumUse::positive_length && !(number >= shortest_length_mm))
            return field.complain(fmt::format("a length below {} mm: found {}", shortest_length_mm, base::shown(text)));
        if (use != SumUse::number && std::abs(number) > longest_length_mm)
            field.complain(fmt::format("a length above {} mm: found {}", longest_length_mm, base::shown(text)));
        return;
    }
    if (use == SumUse::number) return;
    for (const auto& box : boxes_) {
        const auto large = value_if_any(text, box[1]);
        const auto huge = value_if_any(text, box[2]);
        if (!large || !huge || *large == 0 || std::abs(*huge) <= too_steep * std::abs(*large)) continue;
        return field.complain(fmt::format(
            "no length: found {}, which grows with the square of its names as an area does; expected a length",
            base::shown(text)));
    }
}

void SumScope::check_new_name(const fields::Field& field) const {
    const auto& name = field.key();
    if (!fields::is_sum_name(name))
        field.complain_of_key("not a name for a sum: expected a letter, then letters, digits or `_`, and no function");
    else if (contains(names_, name) || name == "w" || name == "d" || name == "i")
        field.complain_of_key(fmt::format("a name that is taken: found {}, expected a new one", base::shown(name)));
}

bool SumScope::uses_lengths(const std::string& text) const {
    const auto names = fields::names_in_sum(text);
    const auto* list = std::get_if<std::vector<std::string>>(&names);
    return list != nullptr &&
           std::any_of(list->begin(), list->end(), [&](const std::string& name) { return contains(lengths_, name); });
}

void SumScope::add(const AskedMeasure& measure) {
    const bool is_length =
        uses_lengths(measure.initial.text) || uses_lengths(measure.low.text) || uses_lengths(measure.high.text);
    names_.push_back(measure.name);
    if (is_length) lengths_.push_back(measure.name);
    for (auto& box : boxes_) {
        const double initial = value_if_any(measure.initial.text, box[0]).value_or(1);
        for (std::size_t i = 0; i < scales.size(); ++i) box[i].set(measure.name, initial * (is_length ? scales[i] : 1));
    }
}

void SumScope::add(const NamedSum& sum) {
    names_.push_back(sum.name);
    for (auto& box : boxes_)
        for (auto& values : box)
            // A sum that has no value for a made-up box may have one for a real one.
            if (const auto value = value_if_any(sum.sum.text, values)) values.set(sum.name, *value);
}

}  // namespace flutebook::box_styles
