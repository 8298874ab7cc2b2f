// The conditions that still prevent closing a month, and the form that closes it.
#pragma once

#include "host/month_answers/month_review.hpp"
#include "host/pages/frame.hpp"
#include "host/pages/markup.hpp"

namespace flutebook::pages {

/// A panel. The form stands there for a controller alone.
[[nodiscard]] Html month_conditions(const Frame& frame, const answers::MonthReview& review);

}  // namespace flutebook::pages
