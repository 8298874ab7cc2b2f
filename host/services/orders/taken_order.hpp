// An order that was taken, as the ledger keeps it.
#pragma once

#include <optional>
#include <string>

#include "host/orders/order_record.hpp"
#include "host/plant/plant.hpp"
#include "ledger/store/store.hpp"

namespace flutebook::services {

/// Its record, knowing every machine that the plant has now; nothing where there is no such order. Throws LedgerError,
/// unfit, where the record cannot be read.
[[nodiscard]] std::optional<orders::OrderRecord> taken_order(const ledger::Store& store, const plant::Plant& plant,
                                                             const std::string& number);

}  // namespace flutebook::services
