// The styles of a plant, and one of them at a size, for people.
#pragma once

#include "host/answers/style_answer.hpp"
#include "host/plant/plant.hpp"
#include "host/render/report.hpp"

namespace flutebook::reports {

/// Code, title, what makes it and where its construction comes from.
[[nodiscard]] render::Report style_list_report(const answers::StyleList& list);

/// The figures of each blank, its scores, and its drawings: flat, folded and half open.
[[nodiscard]] render::Report style_report(const plant::Plant& plant, const answers::ShownStyle& style);

/// Its drawings alone.
[[nodiscard]] render::Drawings style_drawings(const plant::Plant& plant, const answers::ShownStyle& style);

}  // namespace flutebook::reports
