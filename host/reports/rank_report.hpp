// What moves the price, the largest first.
#pragma once

#include "host/answers/rank_answer.hpp"
#include "host/plant/plant.hpp"
#include "host/render/report.hpp"

namespace flutebook::reports {

/// How many numbers of a quantity are listed; the others are counted.
enum class RankLength { first, all };

[[nodiscard]] render::Report rank_report(const plant::Plant& plant, const answers::Rank& answer, RankLength length);

}  // namespace flutebook::reports
