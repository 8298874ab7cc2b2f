// Taking a saved quote as an order.
#pragma once

#include <string>

#include "host/orders/order_record.hpp"
#include "ledger/store/store.hpp"

namespace flutebook::services {

struct OrderOptions {
    std::string quote;   // Q000001
    double quantity;     // one that the quote holds
    std::string number;  // the plant's own; empty: the quote's number and the quantity, "Q000001-500"
    std::string who;
};

/// The order as it was taken, on disk when it returns. Throws LedgerError, refused: no such quote, a quantity it does
/// not hold, a number that is taken.
[[nodiscard]] orders::OrderRecord take_order(ledger::Store& store, const OrderOptions& asked);

}  // namespace flutebook::services
