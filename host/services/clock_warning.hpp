// Warns once if the clock is behind the ledger; such entries keep both times.
#pragma once

#include <vector>

#include "host/base/place.hpp"
#include "ledger/store/store.hpp"

namespace flutebook::services {

/// One warning where an entry that `store` wrote has another time than the computer's clock; else none.
[[nodiscard]] std::vector<base::Warning> clock_warnings(const ledger::Store& store);

}  // namespace flutebook::services
