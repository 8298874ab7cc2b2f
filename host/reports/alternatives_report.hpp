// A request on several boards, at several margins or at given prices: a row each, quantity by quantity.
#pragma once

#include "host/answers/alternatives_answer.hpp"
#include "host/plant/plant.hpp"
#include "host/render/report.hpp"

namespace flutebook::reports {

/// One that has no answer, or cannot be made, says why in its row.
[[nodiscard]] render::Report alternatives_report(const plant::Plant& plant, const answers::Alternatives& answer);

}  // namespace flutebook::reports
