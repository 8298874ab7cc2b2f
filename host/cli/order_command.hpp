// `quote show` and `order`: what was quoted, as it was, and what became an order.
#pragma once

#include <string>

#include "host/cli/arguments.hpp"
#include "host/cli/output.hpp"

namespace flutebook::cli {

/// The bytes that were shown when the quote was saved.
[[nodiscard]] ExitCode run_quote_show(const std::string& ledger, const QuoteShowCommand& asked, Output& output);

/// In JSON {"order", "quote", "quantity", "customer", "board", "corrugator", "route"}.
[[nodiscard]] ExitCode run_order(const std::string& ledger, const OrderCommand& asked, Output& output);

}  // namespace flutebook::cli
