// The parts of quotes and orders in their tables, each content once. For the ledger's own sources.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "ledger/reading/quotes.hpp"
#include "ledger/store/connection.hpp"
#include "ledger/writing/chain.hpp"

namespace flutebook::ledger {

/// Throws LedgerError, refused, where they are too many, too large, or two have one name. `whose` begins its sentence.
void check_parts(const Connection& connection, const std::string& whose, std::span<const QuotePart> parts);

/// Adds the parts under the numbers from `first` on; `table_sql` inserts a number, a name and a content. Writes them
/// into the text of the chain.
void add_parts(Connection& connection, const char* table_sql, std::int64_t first, std::span<const QuotePart> parts,
               ChainText& text);

/// Those that `sql` answers with, for one number: names, bytes and sizes.
[[nodiscard]] std::vector<QuotePart> read_parts(Connection& connection, const char* sql, std::int64_t of);

/// Of the newest; zeros where there is none.
[[nodiscard]] Hash quotes_head(Connection& connection);
[[nodiscard]] Hash orders_head(Connection& connection);
[[nodiscard]] Hash records_head(Connection& connection);

}  // namespace flutebook::ledger
