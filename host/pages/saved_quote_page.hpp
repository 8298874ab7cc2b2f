// A saved quote as it was, with its state and its actions. GET /quotes/Q000001.
#pragma once

#include <optional>
#include <string>

#include "host/answers/quote_answer.hpp"
#include "host/answers/quote_list_answer.hpp"
#include "host/pages/desk_state.hpp"
#include "host/pages/frame.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::pages {

/// Refers to what outlives it.
struct SavedQuotePage {
    const plant::Plant& plant;             // as it was kept with the quote, and its files
    const answers::RequestAnswer& answer;  // as it was given, with its blanks drawn
    const answers::ListedQuote& listed;
    AnswerView view;             // of this address; what is behind a figure was not kept, but for the one asked for
    std::string request_text{};  // the request's file as it was kept: a revision begins from it
    std::string printed{};       // the text of a quote whose figures were not kept otherwise; else empty
};

[[nodiscard]] std::string saved_quote_page(const Frame& frame, const SavedQuotePage& quote);

/// Two of them beside each other, a column each. GET /quotes/Q000001?beside=Q000002.
[[nodiscard]] std::string quotes_beside_page(const Frame& frame, const SavedQuotePage& first,
                                             const SavedQuotePage& second);

/// The same address where the other one is still to be named.
inline constexpr const char* beside_field = "beside";

}  // namespace flutebook::pages
