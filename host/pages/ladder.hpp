// The short answer as a page shows it: a column a quantity, prices largest, so that several quantities are compared on
// a narrow screen as well.
#pragma once

#include <cstddef>
#include <optional>

#include "host/answers/quote_answer.hpp"
#include "host/pages/desk_state.hpp"
#include "host/pages/markup.hpp"
#include "host/reports/sheet_context.hpp"

namespace flutebook::pages {

/// The index of the quantity that is shown; nothing where none of the request can be made.
[[nodiscard]] std::optional<std::size_t> shown_quantity(const answers::RequestAnswer& answer, const AnswerView& view);

/// Prices, order values, profits and measures, and what a box weighs. Ids begin with `prefix`.
[[nodiscard]] Html ladder_html(const reports::SheetContext& context, const answers::RequestAnswer& answer,
                               const AnswerView& view, const std::string& prefix = "");

}  // namespace flutebook::pages
