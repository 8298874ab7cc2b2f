// `month`.
#pragma once

#include "host/catalogue/plant.hpp"
#include "host/cli/arguments.hpp"
#include "host/cli/output.hpp"

namespace flutebook::cli {

/// `ledger` is its file. Throws LedgerError.
[[nodiscard]] ExitCode run_month(const catalogue::Plant& plant, const std::string& ledger, const MonthCommand& asked,
                                 Output& output);

}  // namespace flutebook::cli
