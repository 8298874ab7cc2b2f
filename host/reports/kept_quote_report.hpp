// A saved quote as it was, with its state today.
#pragma once

#include <string>

#include "host/answers/quote_json.hpp"
#include "host/answers/quote_list_answer.hpp"
#include "host/render/report.hpp"

namespace flutebook::reports {

/// `printed` is the text that was saved with a document of version 0, and is shown in place of its figures. What became
/// of it since stands above it.
[[nodiscard]] render::Report kept_quote_report(const answers::QuoteDocument& document, const std::string& printed,
                                               const answers::ListedQuote& listed);

}  // namespace flutebook::reports
