#include "host/plant/model_settings.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <utility>

#include "host/fields/map_reader.hpp"

namespace flutebook::plant {

namespace {

constexpr const char* value_or_table = "a number, a word, or a table of them";

// What was left empty is an empty text: the model's declaration says what is missing.
std::optional<fields::GivenText> read_value(const fields::Field& field, const std::string& expected) {
    if (field.node() != nullptr && field.node()->kind == base::Node::Kind::empty)
        return fields::GivenText{"", false, field.place()};
    return field.given_text(expected);
}

// A table of texts alone: the inner one of two, and the only one of a request.
GivenTable read_texts(const fields::Field& table) {
    GivenTable result;
    for (const auto& cell : table.entries())
        if (auto value = read_value(cell, "a number or a word"))
            result.push_back({cell.key(), cell.key_place(), std::move(*value)});
    return result;
}

GivenTable read_table(const fields::Field& table) {
    GivenTable result;
    for (const auto& cell : table.entries()) {
        if (cell.is_map())
            result.push_back({cell.key(), cell.key_place(), read_texts(cell)});
        else if (auto value = read_value(cell, value_or_table))
            result.push_back({cell.key(), cell.key_place(), std::move(*value)});
    }
    return result;
}

std::optional<GivenValue> read_given(const fields::Field& field) {
    if (field.is_map()) return read_table(field);
    if (auto value = read_value(field, value_or_table)) return std::move(*value);
    return std::nullopt;
}

// `[{from: 2026-01-01, value: 0.148}, …]`
GivenDates read_dates(const fields::Field& list) {
    GivenDates result;
    for (const auto& item : list.items_at_least_one()) {
        fields::MapReader form(item);
        const fields::Field from = form.field("from");
        const fields::Field value = form.field("value");
        const auto day = from.date();
        auto given = read_given(value);
        form.finish();
        if (!day || !given) continue;
        if (!result.empty() && *day <= result.back().from)
            from.complain(fmt::format("out of order: found {} after {}, expected rising dates", base::to_string(*day),
                                      base::to_string(result.back().from)));
        result.push_back({*day, from.place(), std::move(*given), value.place()});
    }
    return result;
}

template <typename Value>
void add(std::vector<GivenSetting>& settings, const fields::Field& field, Value value) {
    settings.push_back({field.key(), field.key_place(), std::move(value), field.place()});
}

// What was complained of stands there without a value: it was given, so it is not missing.
void read_of_plant(const fields::Field& field, std::vector<GivenSetting>& settings) {
    if (field.is_list())
        add(settings, field, read_dates(field));
    else if (field.is_map())
        add(settings, field, read_table(field));
    else if (auto value = read_value(field, value_or_table))
        add(settings, field, std::move(*value));
    else
        add(settings, field, GivenDates{});
}

// A request has one date, and is of one customer.
void read_of_request(const fields::Field& field, std::vector<GivenSetting>& settings) {
    if (field.is_map())
        add(settings, field, read_texts(field));
    else if (auto value = read_value(field, value_or_table))
        add(settings, field, std::move(*value));
    else
        add(settings, field, GivenDates{});
}

}  // namespace

ModelSettings read_model_extras(const fields::Field& model) {
    ModelSettings result{model.key(), model.key_place(), {}};
    for (const auto& setting : model.entries()) read_of_request(setting, result.settings);
    return result;
}

ModelSettings read_listed_model(const fields::Field& model) {
    ModelSettings result{model.key(), model.key_place(), {}};
    for (const auto& entry : model.entries()) {
        if (entry.key() == served_model_key)
            result.model = entry.text();
        else
            read_of_plant(entry, result.settings);
    }
    return result;
}

const GivenSetting* ModelSettings::find(const std::string& name) const {
    const auto found = std::find_if(settings.begin(), settings.end(),
                                    [&](const GivenSetting& setting) { return setting.name == name; });
    return found == settings.end() ? nullptr : &*found;
}

}  // namespace flutebook::plant
