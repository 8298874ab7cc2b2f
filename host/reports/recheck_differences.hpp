// What differs in one quantity of a rechecked quote.
#pragma once

#include <cstddef>

#include "host/answers/recheck_answer.hpp"
#include "host/render/report.hpp"

namespace flutebook::reports {

/// Without blocks where nothing differs.
[[nodiscard]] render::ReportSection changed_quantity_part(const answers::Recheck& checked, std::size_t quantity);

}  // namespace flutebook::reports
