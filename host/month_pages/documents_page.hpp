// Production documents: where they are dropped, chosen or pasted, and the result of one that was posted.
#pragma once

#include <string>
#include <vector>

#include "host/pages/frame.hpp"
#include "host/pages/markup.hpp"
#include "host/render/report.hpp"
#include "ledger/values/entry.hpp"

namespace flutebook::pages {

/// The panel for users who may post; empty for others. Its page has the script `documents.js`, and works without it.
[[nodiscard]] Html documents_panel(const Frame& frame);

/// The frame of a page that has the panel.
[[nodiscard]] Frame with_documents(const Frame& frame);

/// The panel alone.
[[nodiscard]] std::string documents_page(const Frame& frame);

/// What was posted. `months`: those of its rows.
[[nodiscard]] std::string posted_document_page(const Frame& frame, const std::vector<ledger::Month>& months,
                                               const std::vector<std::string>& warnings, const render::Report& report);

}  // namespace flutebook::pages
