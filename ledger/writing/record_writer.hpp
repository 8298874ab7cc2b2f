// Adds records of quotes to their chain. For the ledger's own sources.
#pragma once

#include <cstdint>

#include "ledger/reading/records.hpp"
#include "ledger/store/connection.hpp"
#include "ledger/writing/entry_writer.hpp"

namespace flutebook::ledger {

/// Within a transaction, of a quote that is there. Throws LedgerError, refused, as add_records does.
void add_record(Connection& connection, std::int64_t quote, const QuoteRecordDraft& record, const Actor& actor);

}  // namespace flutebook::ledger
