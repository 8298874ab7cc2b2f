// What stands in the way of closing a month, with the form that closes it; and the form that sends documents.
#pragma once

#include "host/month_answers/month_review.hpp"
#include "host/pages/frame.hpp"
#include "host/pages/markup.hpp"

namespace flutebook::pages {

/// Panels. A form stands there for a controller alone.
[[nodiscard]] Html month_conditions(const Frame& frame, const answers::MonthReview& review);
[[nodiscard]] Html month_documents(const Frame& frame);

}  // namespace flutebook::pages
