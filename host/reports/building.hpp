// The parts of every report: the types of a report by their short names, and the usual columns.
#pragma once

#include <string>
#include <utility>

#include "host/render/report.hpp"

namespace flutebook::reports {

using render::Amount;
using render::Cell;
using render::Code;
using render::Facts;
using render::Note;
using render::Number;
using render::Percentage;
using render::Report;
using render::ReportHeading;
using render::ReportSection;
using render::ReportTable;
using render::Sign;
using render::TableColumn;
using RowKind = render::TableRow::Kind;

/// Never cut.
[[nodiscard]] inline TableColumn text_column(std::string title = {}) {
    return {std::move(title), TableColumn::Kind::text};
}
/// Cut where a page is too narrow.
[[nodiscard]] inline TableColumn name_column(std::string title = {}) {
    return {std::move(title), TableColumn::Kind::name};
}
/// Stands last, and is broken into lines.
[[nodiscard]] inline TableColumn sentence_column(std::string title = {}) {
    return {std::move(title), TableColumn::Kind::sentence};
}
/// `unit` is the unit of a number, the currency of an amount, the base of a share.
[[nodiscard]] inline TableColumn number_column(std::string title, std::string unit = {}) {
    return {std::move(title), TableColumn::Kind::number, std::move(unit)};
}
/// Left empty on a page where it says the same as the row above.
[[nodiscard]] inline TableColumn unrepeated(TableColumn column) {
    column.repeats = TableColumn::Repeats::hidden;
    return column;
}
/// What a reader looks for first.
[[nodiscard]] inline TableColumn strong(TableColumn column) {
    column.weight = TableColumn::Weight::strong;
    return column;
}

}  // namespace flutebook::reports
