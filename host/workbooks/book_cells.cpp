#include "host/workbooks/book_cells.hpp"

#include <fmt/format.h>

#include <utility>

namespace flutebook::workbooks {

using Look = render::BookCell::Look;

render::BookCell said(std::string text, Look look) {
    return {std::move(text), look};
}

render::BookCell formula(std::string text, double result, Look look) {
    return {render::BookFormula{std::move(text), result}, look};
}

BookRow heads(const std::vector<std::string>& titles) {
    BookRow row;
    for (const std::string& title : titles) row.push_back(said(title, Look::head));
    return row;
}

std::string column_name(std::size_t column) {
    const std::string last(1, static_cast<char>('A' + column % 26));
    return column < 26 ? last : column_name(column / 26 - 1) + last;
}

std::string whole_up(const std::string& sum) {
    return fmt::format("ROUNDUP(MAX({}-1E-9,0),0)", sum);
}

}  // namespace flutebook::workbooks
