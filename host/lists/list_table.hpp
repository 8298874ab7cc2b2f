// A list's answer as a table: the columns of the list as they stand, then those of the answer.
//
// What changed against an old price can be told by class of cost only where the day of the old price is known: then the
// item is costed as of that day as well. The change of each class, that of the profit, and what the plant's own figures
// of that day do not explain, add up to the difference. Without the day there are only the parts of the new price.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "host/answers/list_answer.hpp"
#include "host/lists/list_run.hpp"

namespace flutebook::lists {

/// Nothing, a text, an amount, or a number as it was written, with a point.
struct PlainNumber {
    double value;
};
using TableValue = std::variant<std::monostate, std::string, Money, PlainNumber>;

/// By column: "new_price", "new_price.material", "not_in_price", "change.material".
[[nodiscard]] std::vector<std::string> table_header(const ListColumns& columns);

/// As many as the header has.
[[nodiscard]] std::vector<TableValue> table_row(const ListColumns& columns, const AnsweredRow& row);

/// Nothing where there is no old price, or no new one.
[[nodiscard]] std::optional<answers::PriceChange> change_of(const AnsweredRow& row);

/// The row as documents have it.
[[nodiscard]] answers::ListedItem listed_item(const ListColumns& columns, const AnsweredRow& row);

}  // namespace flutebook::lists
