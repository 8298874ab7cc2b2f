// `close`, `reverse`, `verify`, `backup`: what is done to a ledger beside posting.
#pragma once

#include "host/cli/arguments.hpp"
#include "host/cli/output.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::cli {

/// Each: `ledger` is its file. Throws LedgerError.
[[nodiscard]] ExitCode run_close(const plant::Plant& plant, const std::string& ledger, const CloseCommand& asked,
                                 Output& output);
[[nodiscard]] ExitCode run_reverse(const std::string& ledger, const ReverseCommand& asked, Output& output);
/// What is wrong is said on standard error too, one sentence a line.
[[nodiscard]] ExitCode run_verify(const std::string& ledger, const VerifyCommand& asked, Output& output);
[[nodiscard]] ExitCode run_backup(const std::string& ledger, const BackupCommand& asked, Output& output);

}  // namespace flutebook::cli
