// What moves the price, the largest first.
#pragma once

#include "host/plant/plant.hpp"
#include "host/render/report.hpp"
#include "host/what_if_answers/rank_answer.hpp"

namespace flutebook::what_if_reports {

/// How many numbers of a quantity are listed; the others are counted.
enum class RankLength { first, all };

[[nodiscard]] render::Report rank_report(const plant::Plant& plant, const what_if_answers::Rank& answer,
                                         RankLength length);

}  // namespace flutebook::what_if_reports
