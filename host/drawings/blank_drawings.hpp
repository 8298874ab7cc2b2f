// Every drawing of the blanks of a style at a size: each flat, folded and half open.
#pragma once

#include <vector>

#include "host/blanks/flat.hpp"
#include "host/drawings/shown_units.hpp"
#include "host/render/drawing.hpp"

namespace flutebook::drawings {

/// A blank that is not folded is drawn flat alone.
[[nodiscard]] render::Drawings blank_drawings(const ShownUnits& units, const std::vector<blanks::FlatBlank>& blanks);

}  // namespace flutebook::drawings
