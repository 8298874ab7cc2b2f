// Posting, the use-case both faces call: files of production documents in, entries of the ledger out; each row once,
// all files or none.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "host/answers/ledger_answer.hpp"
#include "host/plant/plant.hpp"
#include "host/production/document_format.hpp"
#include "ledger/store/store.hpp"
#include "ledger/values/mass.hpp"
#include "ledger/values/money.hpp"

namespace flutebook::services {

/// Posts every row of every file, in their order, or none: throws InputError (request) with every row that is refused.
/// On disk when it returns. `store` is open for writing, or in memory. Memory does not grow with the rows. Throws
/// LedgerError.
[[nodiscard]] answers::PostAnswer post(const plant::Plant& plant, ledger::Store& store,
                                       const answers::PostOptions& asked);

}  // namespace flutebook::services
