// A spreadsheet file with formulas: cells as values, written beside the reports' workbook, in the one place that knows
// the library.
#pragma once

#include <string>
#include <variant>
#include <vector>

namespace flutebook::render {

/// A formula, and what it comes to: for viewers that do not calculate.
struct BookFormula {
    std::string text;  // "=ROUND(B2*C2,4)"
    double result;
};

struct BookCell {
    /// `input`: a number that others rest on. `worked_out`: one that a model worked out.
    enum class Look { plain, head, total, input, worked_out };
    std::variant<std::monostate, std::string, double, BookFormula> value = {};
    Look look = Look::plain;
};

struct BookSheet {
    std::string name;            // at most 31 characters, unique in its book
    std::vector<double> widths;  // of the columns, in characters
    std::vector<std::vector<BookCell>> rows;
};

struct FormulaBook {
    std::vector<BookSheet> sheets;
};

/// Writes `file`. The same book and year give the same bytes. Answers with what went wrong; empty where nothing did.
[[nodiscard]] std::string write_formula_book(const std::string& file, const FormulaBook& book, int created_in_year);

}  // namespace flutebook::render
