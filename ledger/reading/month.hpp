// What a month holds, read from totals that are kept while posting: the time does not grow with the ledger.
//
// Every list is sorted by its names, in the order of their bytes. Totals whose rows cancel (an entry and its reversal)
// are there with zeros.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "ledger/store/store.hpp"
#include "ledger/values/entry.hpp"

namespace flutebook::ledger {

/// All movements of one kind in a month.
struct Flow {
    std::string from, to, material, cause;
    std::int64_t movements;
    Grams mass;
    Money money;
};
[[nodiscard]] std::vector<Flow> flows(const Store& store, Month month);

/// What an account holds of a material: what came in less what went out, ever. Zeros are left out.
struct Balance {
    std::string account, material;
    Grams mass;
    Money money;
};
/// When the month began: all entries dated before it.
[[nodiscard]] std::vector<Balance> balances_before(const Store& store, Month month);

/// What a centre was allowed to lose by a cause.
struct ExpectedLoss {
    std::string centre, cause;
    Grams mass;
};
[[nodiscard]] std::vector<ExpectedLoss> expected_losses(const Store& store, Month month);

/// A count that stands: those reversed within the month are left out.
struct StandingCount {
    std::int64_t entry;
    Date date;
    Count count;
};
/// In order of date, then of posting.
[[nodiscard]] std::vector<StandingCount> counts(const Store& store, Month month);
/// Every count of the account, of all months, that was never reversed.
[[nodiscard]] std::vector<StandingCount> counts_of(const Store& store, const std::string& account);

/// What a month may be divided by, after what its entries say of themselves.
enum class Axis { centre, shift, board, order };

/// A month's movements of one kind under one centre, shift, board or order (empty: entries that name none).
struct Share {
    std::string of;
    std::string centre;  // of the entries
    std::string from, to, cause;
    std::int64_t movements;
    Grams mass;
    Money money;
};
/// What was expected under one centre, shift, board or order.
struct ExpectedShare {
    std::string of, centre, cause;
    Grams mass;
};
/// By order it reads the month's entries, else totals.
[[nodiscard]] std::vector<Share> shares(const Store& store, Month month, Axis axis);
[[nodiscard]] std::vector<ExpectedShare> expected_shares(const Store& store, Month month, Axis axis);

/// The orders that the month's entries name, in the order of their bytes. Reads the month's entries.
[[nodiscard]] std::vector<std::string> orders_in(const Store& store, Month month);

/// The months that hold documents or are closed, earliest first; entries that say what was saved make no month.
[[nodiscard]] std::vector<Month> months(const Store& store);

/// Those in which the entries from `first` on are dated, the earliest first.
[[nodiscard]] std::vector<Month> months_from_entry(const Store& store, std::int64_t first);

}  // namespace flutebook::ledger
