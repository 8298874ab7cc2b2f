// Closing a month, proving a ledger and copying one that is in use: what faces call.
//
// When a month is closed, what counts found goes to or from `unexplained`; the cost that left with the month's product
// and scrap goes back to `costs`, so that stock is carried into the next month at its own cost. Both are posted with
// the seal.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "host/month/closing.hpp"
#include "host/month_answers/month_answer.hpp"
#include "host/plant/plant.hpp"
#include "ledger/proof/backup.hpp"
#include "ledger/proof/verify.hpp"
#include "ledger/store/store.hpp"
#include "ledger/writing/close.hpp"

namespace flutebook::services {

/// The kinds of the entries that a close posts.
inline constexpr const char* difference_kind = "difference";
inline constexpr const char* month_cost_kind = "month-cost";

struct CloseOptions {
    ledger::Month month;
    std::string why;  // it is closed though it does not balance; else empty
    std::string who;
    ledger::Date today;  // by the machine's clock: a month is closed once it is over
    month::EmptyMonths empty_months = month::EmptyMonths::refuse;
};

/// Sealed and on disk when it returns. Throws LedgerError, refused, with every reason: more is unexplained than the
/// plant allows and nobody said why, or what closing_conditions() names; the month is closed, an earlier one is open.
[[nodiscard]] answers::CloseAnswer close(const plant::Plant& plant, ledger::Store& store, const CloseOptions& asked);

/// Proves the ledger in `file`, and that it still holds the entry whose hash is `kept_head`. Others may post meanwhile.
/// Throws LedgerError where it cannot be read at all, or where the head is none.
[[nodiscard]] ledger::Proof verify(const std::string& file, const std::optional<std::string>& kept_head);

/// Copies the ledger in `file` to `copy`, which is verified before it has that name. Returns the copy's proof.
/// Throws LedgerError.
[[nodiscard]] ledger::BackupProof backup(const std::string& file, const std::string& copy);

}  // namespace flutebook::services
