// `quote recheck`: a saved quote worked out again today, each difference named.
#pragma once

#include <string>

#include "host/cli/arguments.hpp"
#include "host/cli/output.hpp"

namespace flutebook::cli {

/// Done where nothing that was answered differs, refused where something does, unfit where the saved files no longer
/// fit today's plugins, or a model is at fault.
[[nodiscard]] ExitCode run_quote_recheck(const std::string& plant, const std::string& ledger,
                                         const QuoteRecheckCommand& asked, Output& output);

}  // namespace flutebook::cli
