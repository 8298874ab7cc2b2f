// A saved quote beside what it would say today.
#pragma once

#include "host/answers/recheck_answer.hpp"
#include "host/render/report.hpp"

namespace flutebook::reports {

/// Whether anything differs and what caused it; the ladder then and now; what changed in the plant's files and plugins;
/// quantity by quantity every figure and cost line that differs.
[[nodiscard]] render::Report recheck_report(const answers::Recheck& checked);

}  // namespace flutebook::reports
