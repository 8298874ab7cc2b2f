// Closing a month, the use-case both faces call.
//
// What counts found goes to or from `unexplained`; the cost that left with the month's product and scrap goes back to
// `costs`, so that stock is carried into the next month at its own cost. Both are posted with the seal.
#pragma once

#include <string>
#include <vector>

#include "host/answers/month_answer.hpp"
#include "host/month/account.hpp"
#include "host/plant/plant.hpp"
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
};

/// Sealed and on disk when it returns. Throws LedgerError, refused: more is unexplained than the plant allows and
/// nobody said why, an inner stock is below zero, the month is closed, an earlier one is open.
[[nodiscard]] answers::CloseAnswer close(const plant::Plant& plant, ledger::Store& store, const CloseOptions& asked);

}  // namespace flutebook::services
