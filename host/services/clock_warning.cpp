#include "host/services/clock_warning.hpp"

#include <fmt/format.h>

#include "host/base/date.hpp"

namespace flutebook::services {

std::vector<base::Warning> clock_warnings(const ledger::Store& store) {
    const auto lag = store.clock_lag();
    if (!lag) return {};
    return {{store.file(),
             fmt::format(
                 "this computer's clock is behind the newest entry: found {} UTC on it, and {} UTC in the ledger; what "
                 "was written now keeps both times; set the clock, if it is wrong",
                 base::utc_time(lag->clock), base::utc_time(lag->newest))}};
}

}  // namespace flutebook::services
