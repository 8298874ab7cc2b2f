// Reports as one HTML file that needs nothing else: its style stands in it, it has no scripts, and it asks for nothing
// from elsewhere. It is light or dark as the reader's system is, and light on paper.
#pragma once

#include <string>
#include <vector>

#include "host/render/report.hpp"

namespace flutebook::render {

/// One document with the reports below each other. Texts are texts, whatever signs they hold.
[[nodiscard]] std::string to_html(const std::vector<Report>& reports);

}  // namespace flutebook::render
