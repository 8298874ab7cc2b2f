// What a month lost, cause by cause, the greatest excess first; and where and when: by machine and shift, by machine
// and month, by order.
#pragma once

#include "host/month_answers/month_review.hpp"
#include "host/pages/markup.hpp"

namespace flutebook::pages {

/// Panels.
[[nodiscard]] Html month_losses(const answers::MonthReview& review);
[[nodiscard]] Html month_by_shift(const answers::MonthReview& review);
[[nodiscard]] Html month_by_month(const answers::MonthReview& review);
[[nodiscard]] Html month_orders(const answers::MonthReview& review);

}  // namespace flutebook::pages
