// `post`: files of production documents into the ledger.
#pragma once

#include "host/cli/arguments.hpp"
#include "host/cli/output.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::cli {

/// The ledger is made if there is none, but for a dry run, which leaves no file behind. Throws InputError (request)
/// with every row that is refused, and LedgerError.
[[nodiscard]] ExitCode run_post(const plant::Plant& plant, const std::string& ledger, const PostCommand& asked,
                                Output& output);

}  // namespace flutebook::cli
