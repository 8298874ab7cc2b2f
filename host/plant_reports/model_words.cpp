// Numbers are written so that a person can type them again: no trailing zeros, all digits of the double.
#include "host/plant_reports/model_words.hpp"
#include "host/reports/building.hpp"

#include <fmt/format.h>

namespace flutebook::plant_reports {

using namespace reports;

namespace {

// Where a range is there only because it must be finite.
constexpr double boundless = 1e15;

std::string plain_number(double value) {
    return fmt::format("{}", value + 0.0);
}

}  // namespace

std::string range_words(const contract::Range& range) {
    const bool has_end = range.high < boundless;
    const bool has_begin = range.low > -boundless;
    if (has_begin && has_end) return fmt::format("{} to {}", plain_number(range.low), plain_number(range.high));
    if (has_begin) return plain_number(range.low) + " or more";
    return has_end ? plain_number(range.high) + " or less" : "any number";
}

std::string range_words(const contract::Setting& setting) {
    const std::string range = range_words(setting.range);
    return setting.usual ? fmt::format("{}, usually {}", range, range_words(*setting.usual)) : range;
}

std::string allowed_words(const contract::Setting& setting) {
    if (setting.choices.empty())
        return setting.unit == "1" ? range_words(setting) : fmt::format("{} {}", range_words(setting), setting.unit);
    std::string result;
    for (std::size_t i = 0; i < setting.choices.size(); ++i) {
        const bool is_last = i + 1 == setting.choices.size();
        result += (i == 0 ? "" : is_last ? " or " : ", ") + setting.choices[i];
    }
    return result;
}

std::string default_words(const contract::Setting& setting) {
    if (!setting.initial) return "must be given";
    return setting.choices.empty() ? plain_number(*setting.initial)
                                   : setting.choices.at(static_cast<std::size_t>(*setting.initial));
}

std::string varies_words(const contract::Model& model, const contract::Setting& setting) {
    const bool is_one = setting.varies_by == contract::VariesBy::plant;
    std::string result = is_one ? "one" : fmt::format("by {}", contract::to_text(setting.varies_by));
    if (setting.keyed_by) result = "by " + model.settings[*setting.keyed_by].name;
    if (setting.stepped_over) result += ", in steps of " + model.needs[*setting.stepped_over].name;
    return result;
}

std::string axis_words(contract::Axis axis) {
    return axis == contract::Axis::order ? "one for the order"
                                         : fmt::format("one for each {}", contract::to_text(axis));
}

ReportTable name_table(const std::string& table) {
    return {table, {text_column("name"), text_column("unit"), text_column("range"), sentence_column("meaning")}};
}

std::vector<Cell> name_cells(const contract::Name& name, const std::vector<std::string>& before_meaning) {
    std::vector<Cell> cells = {Code{name.name}, Code{name.unit}, range_words(name.range)};
    cells.insert(cells.end(), before_meaning.begin(), before_meaning.end());
    cells.emplace_back(name.meaning);
    return cells;
}

}  // namespace flutebook::plant_reports
