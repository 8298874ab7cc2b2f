// `quote`: request files in, cost sheets or JSON out.
#pragma once

#include <string>

#include "host/cli/arguments.hpp"
#include "host/cli/output.hpp"
#include "host/services/workplace.hpp"

namespace flutebook::cli {

/// Each request stands alone: one that is refused, or that a model fails on, costs nothing and stops no other. Files
/// that share a request number are refused, because their answers could not be told apart.
/// Each quote that is to be kept goes into the `ledger` file, which is made where it is missing.
[[nodiscard]] ExitCode run_quote(const services::Workplace& workplace, const std::string& ledger,
                                 const QuoteCommand& asked, Output& output);

}  // namespace flutebook::cli
