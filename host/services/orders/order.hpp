// Taking a saved quote as an order, and an order that was taken, as the ledger keeps it.
#pragma once

#include <optional>
#include <string>

#include "host/orders/order_record.hpp"
#include "host/plant/plant.hpp"
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

/// Its record, knowing every machine that the plant has now; nothing where there is no such order. Throws LedgerError,
/// unfit, where the record cannot be read.
[[nodiscard]] std::optional<orders::OrderRecord> taken_order(const ledger::Store& store, const plant::Plant& plant,
                                                             const std::string& number);

}  // namespace flutebook::services
