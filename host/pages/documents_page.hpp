// Production documents: sent, shown dry with what they would post, and posted.
#pragma once

#include <string>
#include <vector>

#include "host/pages/frame.hpp"
#include "host/render/report.hpp"

namespace flutebook::pages {

/// The form that sends one.
[[nodiscard]] std::string documents_page(const Frame& frame);

/// What it would post, with the form that posts this very text, known by its digest.
[[nodiscard]] std::string tried_document_page(const Frame& frame, const std::string& digest,
                                              const std::vector<std::string>& warnings, const render::Report& report);

/// What was posted.
[[nodiscard]] std::string posted_document_page(const Frame& frame, const std::vector<std::string>& warnings,
                                               const render::Report& report);

}  // namespace flutebook::pages
