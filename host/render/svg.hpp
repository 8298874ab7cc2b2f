// A drawing as SVG, for an HTML page or as a file by itself. The same drawing gives the same bytes.
#pragma once

#include <string>

#include "host/render/drawing.hpp"

namespace flutebook::render {

/// For a page that has colours() and drawing_style() in its style sheet. `prefix` begins each id, so that no two
/// drawings of a page have one in common.
[[nodiscard]] std::string svg_in_page(const Drawing& drawing, const std::string& prefix);

/// A whole file: its style stands in it, its title and note above the picture. Drawings stand below each other.
[[nodiscard]] std::string svg_file(const Drawings& drawings);

}  // namespace flutebook::render
