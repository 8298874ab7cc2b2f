// Whether box styles fold: the styles of a plant, drawn with its allowances and proved by folding.
#pragma once

#include "host/plant/plant.hpp"
#include "host/plant_answers/style_check_answer.hpp"

namespace flutebook::services {

/// Draws and folds each style at several sizes on every flute that has allowances and a board; measures that a style
/// asks for stay as the style says. The same options give the same boxes. Throws InputError (request) where there is no
/// such style.
[[nodiscard]] plant_answers::StyleCheck check_styles(const plant::Plant& plant,
                                                     const plant_answers::StyleCheckOptions& options);

}  // namespace flutebook::services
