// The totals of months while entries are added: summed here, and written to their tables before the entries are
// committed with them.
//
// Summed by the program and not by triggers of the database: with triggers on every movement, posting took nearly twice
// as long. What could be forgotten that way is caught by verify(), which works every total out again.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <unordered_map>

#include "ledger/store/database.hpp"

namespace flutebook::ledger {

/// Names by their numbers, of one entry.
struct EntryKeys {
    std::int64_t month, centre, shift, board;
};
struct MovementKeys {
    std::int64_t from, to, material, cause;
};

class Totals {
public:
    explicit Totals(Database& database);

    /// Throws LedgerError, refused, where a total leaves the numbers that can be kept.
    void add(const EntryKeys& entry, const MovementKeys& movement, std::int64_t grams, std::int64_t money);
    void add_expected(const EntryKeys& entry, std::int64_t cause, std::int64_t grams);

    /// Writes what was summed since the last time.
    void write();
    /// The transaction was undone.
    void forget();

private:
    struct TotalSum {
        std::int64_t movements = 0, grams = 0, money = 0;
    };
    template <std::size_t Size>
    struct KeyHash {
        std::size_t operator()(const std::array<std::int64_t, Size>& key) const;
    };
    template <std::size_t Size>
    using Sums = std::unordered_map<std::array<std::int64_t, Size>, TotalSum, KeyHash<Size>>;

    void grow(TotalSum& sum, std::int64_t grams, std::int64_t money) const;
    enum class With { mass, mass_and_money };
    template <std::size_t Size>
    static void write(Sums<Size>& sums, Statement& statement, With with);
    void write_when_many();

    const Database& database_;
    Statement add_flow_, add_detail_, add_expected_;
    Sums<5> flows_, expected_;
    Sums<7> details_;
};

}  // namespace flutebook::ledger
