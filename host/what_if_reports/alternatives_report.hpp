// A request on several boards, at several margins or at given prices: a row each, quantity by quantity.
#pragma once

#include "host/plant/plant.hpp"
#include "host/render/report.hpp"
#include "host/what_if_answers/alternatives_answer.hpp"

namespace flutebook::what_if_reports {

/// One that has no answer, or cannot be made, says why in its row.
[[nodiscard]] render::Report alternatives_report(const plant::Plant& plant,
                                                 const what_if_answers::Alternatives& answer);

}  // namespace flutebook::what_if_reports
