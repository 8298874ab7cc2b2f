// Production documents: the form that sends one, and what became of one that was posted.
#pragma once

#include <string>
#include <vector>

#include "host/pages/frame.hpp"
#include "host/render/report.hpp"

namespace flutebook::pages {

/// The form that sends one.
[[nodiscard]] std::string documents_page(const Frame& frame);

/// What was posted.
[[nodiscard]] std::string posted_document_page(const Frame& frame, const std::vector<std::string>& warnings,
                                               const render::Report& report);

}  // namespace flutebook::pages
