// The shapes that drawings share: rectangles, and lengths with their names in the units that people read.
#pragma once

#include <string>
#include <vector>

#include "host/drawings/shown_units.hpp"
#include "host/render/drawing.hpp"

namespace flutebook::drawings {

[[nodiscard]] render::DrawnPolygon board_rectangle(render::DrawnPoint corner, double length_mm, double width_mm,
                                                   std::string name);
[[nodiscard]] render::DrawnPolygon lost_rectangle(render::DrawnPoint corner, double length_mm, double width_mm,
                                                  std::string cause, std::string name);

/// A lane of dimensions at one side of the board.
struct DimensionLane {
    render::DrawnDimension::Side side;
    std::size_t lane;
};

/// One length; `name` says of what.
void add_dimension(render::Drawing& drawing, const ShownUnits& units, DimensionLane lane, double from_mm, double to_mm,
                   const std::string& name);

/// Lengths end to end from 0, and beyond them the whole, from 0 to `whole_mm`; that alone where there is one length.
/// Labels of the lengths come to that of the whole.
void add_chain(render::Drawing& drawing, const ShownUnits& units, render::DrawnDimension::Side side,
               const std::vector<double>& lengths_mm, double whole_mm, const std::string& name);

}  // namespace flutebook::drawings
