// A request before and after some numbers change. Nothing is written, whatever is asked.
#pragma once

#include <vector>

#include "host/answers/quote_answer.hpp"
#include "host/scenario/number_change.hpp"
#include "host/what_if_answers/what_if_answer.hpp"
#include "host/workplace/workplace.hpp"

namespace flutebook::what_if {

using scenario::NumberChange;
using scenario::read_change;

/// The changes are made one after the other; each way is chosen afresh. What comes before is the plain quote, to the
/// bit. Throws InputError (request) where a path or a value is wrong, and as quoting::quote(); ModelError where a model
/// is at fault on either side.
[[nodiscard]] what_if_answers::WhatIf compare(const workplace::Workplace& workplace, const orders::Request& request,
                                              const std::vector<NumberChange>& changes,
                                              const answers::QuoteOptions& asked);

/// The same where nothing changes but the way that it is made: any before, the one that is asked for after. Throws
/// likewise.
[[nodiscard]] what_if_answers::WhatIf compare_ways(const workplace::Workplace& workplace,
                                                   const orders::Request& request, const answers::QuoteOptions& asked);

}  // namespace flutebook::what_if
