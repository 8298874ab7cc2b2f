// Boards beside one another by what they bear and cost, and the cheapest that bears what is asked.
#pragma once

#include "host/render/report.hpp"
#include "host/what_if_answers/board_search_answer.hpp"

namespace flutebook::what_if_reports {

[[nodiscard]] render::Report board_search_report(const plant::Plant& plant, const what_if_answers::BoardSearch& search);

}  // namespace flutebook::what_if_reports
