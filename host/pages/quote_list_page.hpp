// The list of saved quotes. GET /quotes.
#pragma once

#include <string>
#include <vector>

#include "host/answers/quote_list_answer.hpp"
#include "host/pages/desk_state.hpp"
#include "host/pages/frame.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::pages {

/// Refers to what outlives it.
struct SavedQuotesList {
    plant::Units units;
    const answers::QuoteList& list;
    FormFields asked;                     // the query, as it was typed
    std::vector<std::string> complaints;  // of the query; then the list is empty
};

/// The search form has the fields for, request, board, style, size, within, from, to and state; the older ones are
/// asked for by the same with `before`.
[[nodiscard]] std::string quote_list_page(const Frame& frame, const SavedQuotesList& quotes);

}  // namespace flutebook::pages
