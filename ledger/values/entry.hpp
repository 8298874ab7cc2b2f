// One document row as the ledger keeps it: movements between accounts, what was expected, and where it came from.
//
// The ledger knows no boxes: the caller works out what a row is worth, and that is stored with the entry, unchanged.
// Every movement leaves one account and reaches another, so mass and money are conserved by construction.
#pragma once

#include <chrono>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "ledger/values/mass.hpp"
#include "ledger/values/money.hpp"

namespace flutebook::ledger {

using Date = std::chrono::year_month_day;
using Month = std::chrono::year_month;

/// Mass, and money where the row itself fixes it, from one account to another. `material` is what moves: a paper's
/// code, "adhesive", "board", a scrap grade, or a cost class; `cause` says why it was lost, else it is empty.
/// A negative mass is a movement back.
struct Movement {
    std::string from, to;
    std::string material, cause;
    Grams mass;
    Money money;
};

/// What a cause was allowed to lose by this row.
struct Expected {
    std::string cause;
    Grams mass;
};

/// A count of an account at the end of the entry's day: a fact, no movement. `value` where it opens the account.
struct Count {
    std::string account, material;
    Grams mass;
    std::optional<Money> value;
};

/// What is asked to be posted. `kind` names the document ("paper", "corrugator-run", …); `ref` is unique within it.
/// `content` is the row in one canonical form: the same row again is skipped, another content under the same ref is
/// refused.
struct Draft {
    std::string kind, ref, content;
    Date date;
    std::string shift, centre, order, board, note;
    std::vector<Movement> movements;
    std::vector<Expected> expected;
    std::optional<Count> count;
};

/// A draft that was acknowledged: on disk, chained, never changed.
struct Entry {
    std::int64_t number;
    Draft draft;
    std::string who;
    std::chrono::sys_seconds when;                  // UTC, never before the entry before it
    std::optional<std::chrono::sys_seconds> clock;  // the machine's own time, where that was behind `when`
    std::optional<std::int64_t> reverses;           // the entry that this one undoes
    std::optional<std::int64_t> reversed_by;        // the entry that undoes this one
    std::string hash;                               // SHA-256 in hex, of its content and its predecessor's hash
};

}  // namespace flutebook::ledger
