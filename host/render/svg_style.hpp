// The styles that pages and drawings share: colours for light, dark and paper, and a hatch for each cause of loss.
#pragma once

#include <string>

namespace flutebook::render {

/// CSS variables. Warm is board.
[[nodiscard]] const char* colours();

/// The classes of a drawing's marks.
[[nodiscard]] const char* drawing_style();

/// The hatches of what is lost, each cause with its colour: for pages that draw it.
[[nodiscard]] const char* loss_style();

/// The class `t-` of a cause, which sets its colour.
[[nodiscard]] std::string hatch_colour(const std::string& cause);

/// A hatch as an SVG pattern. Of a cause that is not known, the plain one.
[[nodiscard]] std::string hatch_pattern(const std::string& cause, const std::string& id);

}  // namespace flutebook::render
