// The month review: the month in a sentence, six figures, the flow, losses by excess, twelve months, where and when it
// was lost, mills, corrections, documents, and what stands in the way of closing it. GET /months/2026-10.
#pragma once

#include <string>

#include "host/month_answers/month_review.hpp"
#include "host/pages/frame.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::pages {

/// Forms stand there for a controller alone.
[[nodiscard]] std::string month_page(const Frame& frame, const plant::Plant& plant, const answers::MonthReview& review);

/// What must hold before the month is closed, with the form that closes it, as a page. GET /months/2026-10/closing.
[[nodiscard]] std::string month_closing_page(const Frame& frame, const answers::MonthReview& review);

/// All months, the latest first. GET /months.
[[nodiscard]] std::string month_list_page(const Frame& frame, const answers::MonthList& list);

}  // namespace flutebook::pages
