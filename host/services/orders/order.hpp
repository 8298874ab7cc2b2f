// Taking a saved quote as an order, and an order that was taken, as the ledger keeps it. A set is taken as one order
// for each of its pieces, all at once: the set N of a body and a lid is the orders N/body and N/lid.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "host/month_answers/order_list.hpp"
#include "host/orders/order_record.hpp"
#include "host/plant/plant.hpp"
#include "ledger/store/store.hpp"

namespace flutebook::services {

struct OrderOptions {
    std::string quote;   // Q000001
    double quantity;     // one that the quote holds; of a set, sets
    std::string number;  // the plant's own, of a set without its pieces; empty: the quote's number and the quantity,
                         // "Q000001-500"
    std::string who;
};

/// The order as it was taken, on disk when it returns; of a set one for each piece, in the order of the set. Throws
/// LedgerError, refused: no such quote, a quantity it does not hold, a number that is taken.
[[nodiscard]] std::vector<orders::OrderRecord> take_order(ledger::Store& store, const OrderOptions& asked);

/// The orders of a set, by its number, in the order of the set; none where no set was taken under it. Throws
/// LedgerError, unfit, where a record cannot be read.
[[nodiscard]] std::vector<std::string> orders_of_set(const ledger::Store& store, const std::string& number);

/// Its record, knowing every machine that the plant has now; nothing where there is no such order. Throws LedgerError,
/// unfit, where the record cannot be read.
[[nodiscard]] std::optional<orders::OrderRecord> taken_order(const ledger::Store& store, const plant::Plant& plant,
                                                             const std::string& number);

/// The orders that were taken, the newest first, `limit` a page; the last page where there are not that many. Throws
/// LedgerError, unfit, where a record cannot be read.
[[nodiscard]] answers::OrderList order_list(const ledger::Store& store, std::size_t page, std::size_t limit);

}  // namespace flutebook::services
