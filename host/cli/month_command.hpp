// `month`.
#pragma once

#include "host/cli/arguments.hpp"
#include "host/cli/output.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::cli {

/// `ledger` is its file. Throws LedgerError.
[[nodiscard]] ExitCode run_month(const plant::Plant& plant, const std::string& ledger, const MonthCommand& asked,
                                 Output& output);

}  // namespace flutebook::cli
