// How a quote is made, in words.
#pragma once

#include <string>

#include "host/answers/quote_answer.hpp"

namespace flutebook::answers {

/// "C1"; "bought from NAME" of a board that is bought as sheets.
[[nodiscard]] std::string maker_text(const Quote& quote);

/// "C1 > DC1 > FG1".
[[nodiscard]] std::string route_text(const Quote& quote);

}  // namespace flutebook::answers
