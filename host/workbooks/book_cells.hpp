// Cells and their addresses, as every sheet of a quote's workbook writes them.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "host/render/formula_book.hpp"

namespace flutebook::workbooks {

using BookRow = std::vector<render::BookCell>;

[[nodiscard]] render::BookCell said(std::string text, render::BookCell::Look look = render::BookCell::Look::plain);
[[nodiscard]] render::BookCell formula(std::string text, double result,
                                       render::BookCell::Look look = render::BookCell::Look::plain);
[[nodiscard]] BookRow heads(const std::vector<std::string>& titles);

/// "A", "Z", "AA"; counted from 0.
[[nodiscard]] std::string column_name(std::size_t column);

/// Whole pieces at least `sum`, where a hair over a whole number counts as that number: run::whole_up as a spreadsheet
/// says it. Without the equals sign.
[[nodiscard]] std::string whole_up(const std::string& sum);

}  // namespace flutebook::workbooks
