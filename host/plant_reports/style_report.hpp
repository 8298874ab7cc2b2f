// The styles of a plant, and one of them at a size, for people.
#pragma once

#include "host/plant/plant.hpp"
#include "host/plant_answers/style_answer.hpp"
#include "host/render/report.hpp"

namespace flutebook::plant_reports {

/// Code, title, what makes it and where its construction comes from.
[[nodiscard]] render::Report style_list_report(const plant_answers::StyleListAnswer& list);

/// The figures of each blank, its scores, and its drawings: flat, folded and half open.
[[nodiscard]] render::Report style_report(const plant::Plant& plant, const plant_answers::ShownStyle& style);

/// Its drawings alone.
[[nodiscard]] render::Drawings style_drawings(const plant::Plant& plant, const plant_answers::ShownStyle& style);

}  // namespace flutebook::plant_reports
