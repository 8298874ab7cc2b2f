// The pages below a month: one cause by the places that lost by it, a list of entries, one entry as it was posted.
#pragma once

#include <string>

#include "host/month_answers/entry_answer.hpp"
#include "host/month_answers/month_review.hpp"
#include "host/pages/frame.hpp"

namespace flutebook::pages {

/// GET /months/2026-10/causes/side-trim.
[[nodiscard]] std::string month_cause_page(const Frame& frame, const answers::CauseReview& cause);

/// GET /entries?month=2026-10&kind=&cause=&centre=&shift=&order=&after=.
[[nodiscard]] std::string entry_list_page(const Frame& frame, const answers::EntryList& list);

/// GET /entries/2031. The form that reverses it stands there for a controller, where it can be reversed.
[[nodiscard]] std::string entry_page(const Frame& frame, const answers::EntryAnswer& answer);

}  // namespace flutebook::pages
