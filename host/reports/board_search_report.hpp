// Boards beside one another by what they bear and cost, and the cheapest that bears what is asked.
#pragma once

#include "host/answers/board_search_answer.hpp"
#include "host/render/report.hpp"

namespace flutebook::reports {

[[nodiscard]] render::Report board_search_report(const plant::Plant& plant, const answers::BoardSearch& search);

}  // namespace flutebook::reports
