#include "host/workbooks/inputs_sheet.hpp"

#include <fmt/format.h>

#include "host/base/place.hpp"

namespace flutebook::workbooks {

namespace {

using Look = render::BookCell::Look;

constexpr std::size_t first_row = 2;

std::string places_text(const std::vector<base::Place>& places) {
    std::string result;
    for (const base::Place& place : places) result += (result.empty() ? "" : ", ") + base::place_text(place);
    return result;
}

}  // namespace

std::size_t InputsSheet::add(const OwnInput& input) {
    render::BookCell number;
    if (input.value) number = {*input.value, Look::input};
    rows_.push_back({said(input.name), said(input.where), std::move(number), said(input.unit), said(input.kind),
                     said(input.meaning), said(input.place)});
    return first_row + rows_.size() - 1;
}

std::size_t InputsSheet::row_of(const explain::TracedFigure& figure) {
    const Key key{figure.name, figure.where, figure.unit, figure.value};
    const auto [found, is_new] = rows_of_figures_.emplace(key, first_row + rows_.size());
    if (!is_new) return found->second;
    const bool is_given = figure.kind != explain::TracedFigure::Kind::provided;
    rows_.push_back({said(figure.name),
                     said(figure.where),
                     {figure.value, is_given ? Look::input : Look::worked_out},
                     said(figure.unit),
                     said(explain::to_text(figure.kind)),
                     said(figure.meaning),
                     said(places_text(figure.places))});
    return found->second;
}

std::string InputsSheet::cell(std::size_t row) {
    return fmt::format("Inputs!$C${}", row);
}

render::BookSheet InputsSheet::sheet() const {
    render::BookSheet result{"Inputs", {32, 22, 18, 12, 12, 60, 48}, {}};
    result.rows.push_back(heads({"name", "where", "value", "unit", "kind", "what it is", "file:line:column"}));
    result.rows.insert(result.rows.end(), rows_.begin(), rows_.end());
    return result;
}

}  // namespace flutebook::workbooks
