// Where one amount of a saved quote comes from, down to file and line. GET /quotes/Q000001/lines/starch.
#pragma once

#include <cstddef>
#include <string>

#include "host/answers/quote_answer.hpp"
#include "host/pages/frame.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::pages {

/// Refers to what outlives it.
struct QuoteLinePage {
    const std::string& number;  // of the quote
    const plant::Plant& plant;
    const answers::RequestAnswer& answer;  // that explains the figure
    std::size_t quantity;                  // an index of the answer's
    const std::string& figure;
};

/// Of a set a section a piece.
[[nodiscard]] std::string quote_line_page(const Frame& frame, const QuoteLinePage& line);

}  // namespace flutebook::pages
