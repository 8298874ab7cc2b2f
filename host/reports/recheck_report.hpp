// A saved quote compared with its answer today: the verdict, and what differs in each quantity.
#pragma once

#include <cstddef>
#include <string>

#include "host/answers/recheck_answer.hpp"
#include "host/render/report.hpp"

namespace flutebook::reports {

/// Whether anything differs and what caused it; the ladder then and now; what changed in the plant's files and plugins;
/// quantity by quantity every figure and cost line that differs.
[[nodiscard]] render::Report recheck_report(const answers::Recheck& checked);

/// Without blocks where nothing differs.
[[nodiscard]] render::ReportSection changed_quantity_part(const answers::Recheck& checked, std::size_t quantity);

/// Where a line is charged: its machine, or both where another took its place; of a ply, which one.
[[nodiscard]] std::string place_of(const answers::ChangedLine& line);

}  // namespace flutebook::reports
