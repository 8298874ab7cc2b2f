// Checks the tables of totals against the sums of all entries, calculated from their movements alone.
#pragma once

#include <array>
#include <cstdint>
#include <map>
#include <string>
#include <unordered_map>

#include "ledger/proof/findings.hpp"
#include "ledger/store/database.hpp"

namespace flutebook::ledger::proof {

/// The ledger's names by their numbers.
class NameList {
public:
    explicit NameList(Database& books);
    /// Null where there is no such name.
    [[nodiscard]] const std::string* find(std::int64_t number) const;
    /// For people: a question mark where there is none.
    [[nodiscard]] std::string shown(std::int64_t number) const;

private:
    std::unordered_map<std::int64_t, std::string> names_;
};

struct RecountedSum {
    std::int64_t movements = 0, grams = 0, money = 0;
    bool is_too_large = false;

    void add(std::int64_t more_grams, std::int64_t more_money);
    friend bool operator==(const RecountedSum&, const RecountedSum&) = default;
};

/// By the same names as the tables of totals have them.
struct Recount {
    std::map<std::array<std::int64_t, 5>, RecountedSum> flows;     // month, from, to, material, cause
    std::map<std::array<std::int64_t, 7>, RecountedSum> details;   // month, centre, shift, board, from, to, cause
    std::map<std::array<std::int64_t, 5>, RecountedSum> expected;  // month, centre, shift, board, cause
};

void prove_totals(Database& books, const NameList& names, const Recount& recount, Findings& findings);
/// The totals of one month; `recount` holds all of its entries, and may hold others.
void prove_totals_of(Database& books, std::int64_t month, const NameList& names, const Recount& recount,
                     Findings& findings);

}  // namespace flutebook::ledger::proof
