// A request before and after some numbers change: the numbers, the prices side by side, then each quantity line by
// line.
#pragma once

#include "host/plant/plant.hpp"
#include "host/render/report.hpp"
#include "host/what_if_answers/what_if_answer.hpp"

namespace flutebook::what_if_reports {

/// The lines' differences add up to that of the cost, as printed.
[[nodiscard]] render::Report what_if_report(const plant::Plant& plant, const what_if_answers::WhatIf& answer);

}  // namespace flutebook::what_if_reports
