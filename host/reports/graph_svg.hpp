// `plugin graph --svg`: the drawing itself, by Graphviz where it is installed.
#pragma once

#include <string>

namespace flutebook::reports {

/// A drawing, or why there is none: exactly one is not empty.
struct Drawn {
    std::string svg, complaint;
};

/// Has the program `dot` draw a graph that is written in its language. Waits for it.
[[nodiscard]] Drawn drawn_as_svg(const std::string& dot);

}  // namespace flutebook::reports
