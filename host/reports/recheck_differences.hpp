// What differs in one quantity of a rechecked quote.
#pragma once

#include <cstddef>

#include "host/render/report.hpp"
#include "host/services/quoting/recheck.hpp"

namespace flutebook::reports {

/// Without blocks where nothing differs.
[[nodiscard]] render::ReportSection changed_quantity_part(const services::Recheck& checked, std::size_t quantity);

}  // namespace flutebook::reports
