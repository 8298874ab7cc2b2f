// What is done to a ledger while something goes wrong, the same by the victim and by whoever repairs it afterwards.
#pragma once

#include <string>

#include "ledger/store/clock.hpp"
#include "ledger/store/store.hpp"

namespace flutebook::fixture {

inline constexpr const char* writer = "mara";

/// Stands still, so that two runs write the same bytes.
[[nodiscard]] const ledger::Clock& still_clock();

/// Makes a ledger with `documents` of a stream, and closes its file.
void make_ledger(const std::string& file, std::uint64_t seed, std::size_t documents);
/// The same in tables of version 1.
void make_old_ledger(const std::string& file, std::uint64_t seed, std::size_t documents);

void close_september(ledger::Store& store);
/// Three quotes, then an order: what is there already is left alone.
void save_quotes_and_order(ledger::Store& store);
/// Marks each quote lost, in an act of its own; what is marked already is left alone.
void mark_quotes(ledger::Store& store);

/// A hash of every row of every table: two ledgers in the same state have the same.
[[nodiscard]] std::string contents(const std::string& file);

}  // namespace flutebook::fixture
