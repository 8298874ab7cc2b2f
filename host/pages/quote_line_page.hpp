// Where one amount of a saved quote comes from, down to file and line. GET /quotes/Q000001/lines/starch.
#pragma once

#include <string>
#include <vector>

#include "host/pages/frame.hpp"
#include "host/render/report.hpp"

namespace flutebook::pages {

struct QuoteLinePage {
    std::string number;   // of the quote
    std::string request;  // its title
    double quantity;
    std::string figure;
    std::vector<render::ReportSection> sections;  // of the box, or of each piece of a set
};

[[nodiscard]] std::string quote_line_page(const Frame& frame, const QuoteLinePage& line);

}  // namespace flutebook::pages
