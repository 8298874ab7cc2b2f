// Reports as one HTML file that needs nothing else: its style stands in it, it has no scripts, and it asks for nothing
// from elsewhere. It is light or dark as the reader's system is, and light on paper.
#pragma once

#include <string>
#include <vector>

#include "host/render/report.hpp"

namespace flutebook::render {

/// What a document that leaves the house has of its own.
struct PageLook {
    /// Of the sheets that it is printed on: `any` leaves it to the printer.
    enum class Size { any, a4, letter };
    std::string language = "en";  // a code of ISO 639-1
    std::string title = {};       // of the document; empty: the first report's
    Size size = Size::any;
    /// Where whoever reads it in the house came from; stands above it, and on no paper. Without an address, nothing.
    struct WayBack {
        std::string address, text;
    } back = {};
};

/// One document with the reports below each other. Texts are texts, whatever signs they hold.
[[nodiscard]] std::string to_html(const std::vector<Report>& reports, const PageLook& look = {});

}  // namespace flutebook::render
