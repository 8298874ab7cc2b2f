// A page that shows any report in the common frame.
#pragma once

#include <string>
#include <vector>

#include "host/pages/frame.hpp"
#include "host/pages/markup.hpp"
#include "host/render/report.hpp"

namespace flutebook::pages {

/// `title` names the page, and stands above reports that have no heading.
[[nodiscard]] std::string report_page(const Frame& frame, const std::string& title,
                                      const std::vector<render::Report>& reports);

/// With a way back above them.
[[nodiscard]] std::string report_page(const Frame& frame, const std::string& title,
                                      const std::vector<render::Report>& reports, const Html& above);

}  // namespace flutebook::pages
