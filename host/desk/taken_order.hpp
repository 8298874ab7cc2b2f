// An order that was taken, as the ledger keeps it.
#pragma once

#include <optional>
#include <string>

#include "host/catalogue/plant.hpp"
#include "host/review/order_record.hpp"
#include "ledger/store.hpp"

namespace flutebook::desk {

/// Its record, knowing every machine that the plant has now; nothing where there is no such order. Throws LedgerError,
/// unfit, where the record cannot be read.
[[nodiscard]] std::optional<review::OrderRecord> taken_order(const ledger::Store& store, const catalogue::Plant& plant,
                                                             const std::string& number);

}  // namespace flutebook::desk
