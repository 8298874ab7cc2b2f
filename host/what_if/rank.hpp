// What moves a price: changes every number behind a quote alone by a tenth, and quotes the request again.
#pragma once

#include <optional>
#include <vector>

#include "host/answers/quote_answer.hpp"
#include "host/scenario/number_change.hpp"
#include "host/what_if_answers/rank_answer.hpp"
#include "host/workplace/workplace.hpp"

namespace flutebook::what_if {

/// At each quantity of the request, or at the one that is named. A count is moved by at least one; what cannot stand a
/// tenth more is moved by a tenth less. The way is chosen afresh each time, so each price is that of `--with` with the
/// same change. Where there are `changes`, they are made first: everything is moved from there. The answer does not
/// depend on the number of threads. Throws InputError (request) where the request has no such quantity, and as
/// quoting::quote(); ModelError where a model is at fault before anything is moved.
[[nodiscard]] what_if_answers::Rank rank(const workplace::Workplace& workplace, const orders::Request& request,
                                         const std::vector<scenario::NumberChange>& changes,
                                         const std::optional<double>& quantity, const answers::QuoteOptions& asked);

}  // namespace flutebook::what_if
