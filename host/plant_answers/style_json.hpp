// The documents about styles: what `style list`, `style show` and `style check` write with --json. Lengths are mm,
// metric for every plant.
//
// `style list --json`: {"styles": [{"code", "title", "note" (null where there is none), "made_by": [STAGE...],
//   "pieces": [NAME...] (empty for a style of one), "measures": [{"name", "default", "low", "high", "says"}...]}...]};
//   the sums of a measure as the style writes them. "made_by" is that of the first piece.
//
// `style show --json`: {"style", "title", "note", "pieces": [{"piece" (null for a style of one), "count",
//   "made_by": [STAGE...], "length_mm", "width_mm", "area_m2", "cut_m", "crease_m", "joint_mm", "print_area_m2",
//   "scores": {"along_mm": [...], "across_mm": [...]}}...]}; scores by their places from the blank's left and upper
//   edge: `along` of creases that run with the flutes, `across` of creases that run with the web.
//
// `style check --json`: {"folds", "styles": [{"style", "title", "note", "folds", "is_folded", "sizes": [S...],
//   "random_boxes", "refused_boxes" (of those, by the style itself), "wrong_boxes": [S...]}...]}
// S = {"flutes", "caliper_mm", "inside_mm": [L, B, H], "refused" (why the style cannot be drawn so, or null),
//   "pieces": [{"inside_mm": [RANGE...], "walls_mm": [...]}...], "faults": [{"kind" (landing cutting size reach cover
//   joint fit side), "piece", "step" (from 1; null: the folded box), "amount" (mm; of cover a share), "text"}...]}
// RANGE = {"pushed_in", "pushed_out"}: with all layers pushed so; null where the style does not say how it is measured.
//
// STAGE = a kind of machine, or kinds with "or" between them: "slitter or die-cutter"; no stage: the corrugator alone.
#pragma once

#include <string>

#include "host/plant_answers/style_answer.hpp"
#include "host/plant_answers/style_check_answer.hpp"

namespace flutebook::plant_answers {

/// "slitter or die-cutter", as a file of styles writes it.
[[nodiscard]] std::string stage_text(const box_styles::Stage& stage);

[[nodiscard]] std::string style_list_document(const StyleListAnswer& list);
[[nodiscard]] std::string style_document(const ShownStyle& style);
[[nodiscard]] std::string style_check_document(const StyleCheck& check);

}  // namespace flutebook::plant_answers
