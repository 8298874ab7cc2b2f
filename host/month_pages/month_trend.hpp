// The month beside others: in figures, as lines over twelve months, and summed over the year.
#pragma once

#include "host/month_answers/month_review.hpp"
#include "host/pages/markup.hpp"

namespace flutebook::pages {

/// The month in one sentence, which nets nothing.
[[nodiscard]] Html month_sentence(const answers::MonthReview& review);
/// Six figures, each with its base, what was expected or allowed, the month before and the year.
[[nodiscard]] Html month_figures(const answers::MonthReview& review);
/// Panels.
[[nodiscard]] Html month_twelve(const answers::MonthReview& review);
[[nodiscard]] Html month_year(const answers::MonthReview& review);

}  // namespace flutebook::pages
