// Columns that every plant knows stand in one table; those of its styles' measures and its models' settings are looked
// up by name.
#include "host/lists/list_columns.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <set>

#include "host/base/errors.hpp"
#include "host/base/quoted_text.hpp"
#include "host/contract/model.hpp"

namespace flutebook::lists {

namespace {

using Kind = ListColumn::Kind;

struct KnownColumn {
    const char* name;
    Kind kind;
    bool is_required;
};

constexpr std::array known_columns{
    KnownColumn{"request", Kind::code, true},      KnownColumn{"customer", Kind::code, false},
    KnownColumn{"date", Kind::code, false},        KnownColumn{"style", Kind::style, true},
    KnownColumn{"length", Kind::side, true},       KnownColumn{"width", Kind::side, true},
    KnownColumn{"height", Kind::side, false},      KnownColumn{"area", Kind::side, false},
    KnownColumn{"flutes", Kind::code, false},      KnownColumn{"board", Kind::code, true},
    KnownColumn{"quantity", Kind::quantity, true}, KnownColumn{"margin", Kind::number, true},
    KnownColumn{"colours", Kind::number, false},   KnownColumn{"route", Kind::route, false},
    KnownColumn{"under", Kind::carried, false},    KnownColumn{"over", Kind::carried, false},
    KnownColumn{"price", Kind::price, false},      KnownColumn{"price_date", Kind::price_day, false}};

std::vector<std::string> settings_of_requests(const engine::Graph& graph) {
    std::vector<std::string> names;
    for (const contract::Model& model : graph.models)
        for (const contract::Setting& setting : model.settings)
            if (setting.varies_by == contract::VariesBy::request) names.push_back(model.id + "." + setting.name);
    return names;
}

std::set<std::string> measures_of_styles(const plant::Plant& plant) {
    std::set<std::string> names;
    for (const auto& style : plant.styles)
        for (const auto& ask : style.asks) names.insert(ask.name);
    return names;
}

// Finds what a header's names mean.
class HeaderReader {
public:
    HeaderReader(const plant::Plant& plant, const engine::Graph& graph)
        : plant_(plant), settings_(settings_of_requests(graph)) {}

    std::optional<ListColumn> column(const std::string& name) {
        for (const KnownColumn& known : known_columns)
            if (name == known.name) return ListColumn{known.kind, name, "", name, ""};
        if (is_answer_column(name)) return ListColumn{Kind::answer, name, "", "", ""};
        if (std::find(settings_.begin(), settings_.end(), name) != settings_.end()) {
            const std::size_t point = name.find('.');
            return ListColumn{Kind::extra, name, "extras", name.substr(0, point), name.substr(point + 1)};
        }
        if (measures().count(name) != 0) return ListColumn{Kind::measure, name, "measures", name, ""};
        return std::nullopt;
    }

    std::string known() {
        std::string text;
        for (const KnownColumn& known : known_columns) text += (text.empty() ? "" : ", ") + std::string(known.name);
        if (!measures().empty()) text += "; measures of styles: " + fmt::format("{}", fmt::join(measures(), ", "));
        if (!settings_.empty()) text += "; extras: " + fmt::format("{}", fmt::join(settings_, ", "));
        return text;
    }

private:
    const std::set<std::string>& measures() {
        if (!measures_) measures_ = measures_of_styles(plant_);
        return *measures_;
    }

    const plant::Plant& plant_;
    std::vector<std::string> settings_;
    std::optional<std::set<std::string>> measures_;  // read when a name is asked for that is no other
};

// A plant that has margins of its own misses one only in the rows that these do not reach.
bool is_missed(const KnownColumn& column, const plant::Plant& plant) {
    const bool has_margins = !plant.pricing.margins.empty() || !plant.pricing.customers.empty();
    return column.is_required && !(has_margins && column.name == std::string("margin"));
}

std::vector<std::string> missing_columns(const plant::Plant& plant, const std::vector<ListColumn>& columns) {
    std::vector<std::string> missing;
    for (const KnownColumn& known : known_columns) {
        const bool is_there = std::any_of(columns.begin(), columns.end(),
                                          [&](const ListColumn& column) { return column.name == known.name; });
        if (is_missed(known, plant) && !is_there) missing.push_back(base::shown(known.name));
    }
    return missing;
}

}  // namespace

ListColumns ListColumns::read(const ListRow& header, const plant::Plant& plant, const engine::Graph& graph,
                              ListNumbers numbers) {
    std::vector<std::string> errors;
    ListColumns result;
    result.numbers_ = numbers;
    HeaderReader reader(plant, graph);
    if (header.fault) errors.push_back(*header.fault);
    for (const ListCell& cell : header.cells) {
        const auto column = reader.column(cell.text);
        const bool is_twice = std::any_of(result.columns_.begin(), result.columns_.end(),
                                          [&](const ListColumn& other) { return other.name == cell.text; });
        if (!column || is_twice)
            errors.push_back(fmt::format("{}: {}: found {}; {}", base::place_text(cell.place),
                                         is_twice ? "a column twice" : "unknown column", base::shown(cell.text),
                                         is_twice ? "name each column once" : "known columns: " + reader.known()));
        if (column) result.columns_.push_back(*column);
    }
    const auto missing = missing_columns(plant, result.columns_);
    if (errors.empty() && !missing.empty())
        errors.push_back(fmt::format("{}: the header lacks columns: add {}; known columns: {}",
                                     base::place_text(header.place), fmt::join(missing, ", "), reader.known()));
    if (!errors.empty()) throw InputError(InputError::Whose::request, errors);
    return result;
}

bool ListColumns::has(ListColumn::Kind kind) const {
    return std::any_of(columns_.begin(), columns_.end(), [&](const ListColumn& column) { return column.kind == kind; });
}

std::string ListColumns::text(const ListRow& row, const std::string& name) const {
    for (std::size_t c = 0; c < row.cells.size() && c < columns_.size(); ++c)
        if (columns_[c].name == name) return row.cells[c].text;
    return "";
}

}  // namespace flutebook::lists
