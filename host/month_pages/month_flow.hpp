// The flow of mass from the paper store to boxes and mills, and the shares of the total.
#pragma once

#include "host/month_answers/month_review.hpp"
#include "host/pages/markup.hpp"

namespace flutebook::pages {

/// A panel.
[[nodiscard]] Html month_flow(const answers::MonthReview& review);

}  // namespace flutebook::pages
