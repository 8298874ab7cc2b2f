// Every drawing of the blanks of a style at a size: each flat, folded and half open.
#pragma once

#include <vector>

#include "host/geometry/flat.hpp"
#include "host/render/drawing.hpp"
#include "host/reports/shown_units.hpp"

namespace flutebook::reports {

/// A blank that is not folded is drawn flat alone.
[[nodiscard]] render::Drawings blank_drawings(const ShownUnits& units, const std::vector<geometry::FlatBlank>& blanks);

}  // namespace flutebook::reports
