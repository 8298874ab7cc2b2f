// Which styles fold into the box that is asked for, and what is wrong with those that do not.
#pragma once

#include "host/plant/plant.hpp"
#include "host/plant_answers/style_check_answer.hpp"
#include "host/render/report.hpp"

namespace flutebook::plant_reports {

/// A line a style, then for each that does not fold every fault with its size and flutes.
[[nodiscard]] render::Report style_check_report(const plant::Plant& plant, const plant_answers::StyleCheck& check);

}  // namespace flutebook::plant_reports
