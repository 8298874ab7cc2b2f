// `order cost`: an order that was made, quoted against actual.
#pragma once

#include <string>

#include "host/cli/arguments.hpp"
#include "host/cli/output.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::cli {

/// `plant` as its files are now; `ledger` is its file. Throws InputError, ModelError, LedgerError.
[[nodiscard]] ExitCode run_order_cost(const plant::Plant& plant, const std::string& ledger,
                                      const OrderCostCommand& asked, Output& output);

}  // namespace flutebook::cli
