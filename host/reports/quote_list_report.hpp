// A list of saved quotes, and the facts that are shown with one quote's sheet.
#pragma once

#include <optional>

#include "host/answers/quote_list_answer.hpp"
#include "host/plant/plant.hpp"
#include "host/render/report.hpp"

namespace flutebook::reports {

/// One row a quote, newest first; sizes in the plant's units.
[[nodiscard]] render::Report quote_list_report(plant::Units units, const answers::QuoteList& list);

/// Its revision, what it was copied from and what became of it. Nothing where there is nothing to tell: it is the first
/// of its request and nobody said anything of it.
[[nodiscard]] std::optional<render::Report> quote_history_report(const answers::ListedQuote& quote);

}  // namespace flutebook::reports
