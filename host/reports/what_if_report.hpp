// A request before and after some numbers change: the numbers, the prices side by side, then each quantity line by
// line.
#pragma once

#include "host/answers/what_if_answer.hpp"
#include "host/plant/plant.hpp"
#include "host/render/report.hpp"

namespace flutebook::reports {

/// The lines' differences add up to that of the cost, as printed.
[[nodiscard]] render::Report what_if_report(const plant::Plant& plant, const answers::WhatIf& answer);

}  // namespace flutebook::reports
