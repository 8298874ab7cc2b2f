#include "host/pages/desk_state.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cstdlib>

namespace flutebook::pages {

namespace {

using orders::EnquiryFields;

// The form's fields that are the same in every plant; any other names a measure or a model's setting.
struct KnownField {
    std::string_view name;
    std::string EnquiryFields::*field;
};

constexpr std::array<KnownField, 12> known_fields{{{"request", &EnquiryFields::request},
                                                   {"customer", &EnquiryFields::customer},
                                                   {"date", &EnquiryFields::date},
                                                   {"style", &EnquiryFields::style},
                                                   {"l", &EnquiryFields::length},
                                                   {"w", &EnquiryFields::width},
                                                   {"h", &EnquiryFields::height},
                                                   {"board", &EnquiryFields::board},
                                                   {"quantities", &EnquiryFields::quantities},
                                                   {"margin", &EnquiryFields::margin},
                                                   {"colours", &EnquiryFields::colours},
                                                   {"route", &EnquiryFields::route}}};

bool is_of_way(std::string_view name) {
    return name == beside_query::corrugator || name == beside_query::roll || name == beside_query::ups;
}

bool is_beside(std::string_view name) {
    constexpr std::array<std::string_view, 7> names = {
        beside_query::with, beside_query::boards, beside_query::margins, beside_query::prices,
        beside_query::rank, beside_query::ect,    beside_query::bct};
    return is_of_way(name) || std::find(names.begin(), names.end(), name) != names.end();
}

bool is_of_view(std::string_view name) {
    return name == "quantity" || name == "explain" || name == "line" || name == "token" || is_beside(name);
}

std::string quantity_text(double quantity) {
    return fmt::format("{:.0f}", quantity);
}

}  // namespace

std::string field_value(const FormFields& fields, std::string_view name) {
    const auto found =
        std::find_if(fields.begin(), fields.end(), [&](const auto& field) { return field.first == name; });
    return found == fields.end() ? "" : found->second;
}

Address AnswerView::at_quantity(double other) const {
    return address.with("quantity", quantity_text(other));
}

Address AnswerView::at_figure(double at, const std::string& other) const {
    return origins == Origins::below ? at_quantity(at).with("explain", other)
                                     : address.at("lines").at(other).with("quantity", quantity_text(at));
}

AnswerView answer_view(Address address, const FormFields& query) {
    AnswerView view{std::move(address), std::nullopt, field_value(query, "explain")};
    const std::string quantity = field_value(query, "quantity");
    const bool is_whole =
        !quantity.empty() && quantity.size() <= 12 && quantity.find_first_not_of("0123456789") == std::string::npos;
    if (is_whole) view.quantity = std::strtod(quantity.c_str(), nullptr);
    return view;
}

std::string asked_line(const FormFields& query) {
    if (const std::string line = field_value(query, "line"); !line.empty()) return line;
    EnquiryFields fields;
    for (const auto& [name, value] : query) {
        const std::string& field_name = name;
        const auto known = std::find_if(known_fields.begin(), known_fields.end(),
                                        [&](const KnownField& field) { return field.name == field_name; });
        if (known != known_fields.end())
            fields.*(known->field) = value;
        else if (!is_of_view(field_name))
            fields.named.emplace_back(field_name, value);
    }
    return orders::enquiry_line(fields);
}

FormFields beside_fields(const FormFields& query) {
    FormFields result;
    for (const auto& field : query)
        if (is_beside(field.first) && !field.second.empty()) result.push_back(field);
    return result;
}

FormFields without_way(const FormFields& beside) {
    FormFields result;
    for (const auto& field : beside)
        if (!is_of_way(field.first)) result.push_back(field);
    return result;
}

Address desk_address(const std::string& line, const FormFields& beside) {
    Address result = Address("/quotes/new").with("line", line);
    for (const auto& [name, value] : beside) result = result.with(name, value);
    return result;
}

std::optional<std::string> asked_figure(const AnswerView& view, double quantity) {
    if (view.figure.empty()) return std::nullopt;
    return view.figure + "@" + quantity_text(quantity);
}

}  // namespace flutebook::pages
