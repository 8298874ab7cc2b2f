// The route of a request: machines by their codes, for every piece of its style or for each, checked against what makes
// the piece stage by stage.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "host/fields/map_reader.hpp"
#include "host/orders/request.hpp"

namespace flutebook::orders {

/// A model takes so many steps between the corrugator and dispatch.
inline constexpr std::size_t most_converters = 14;

/// What makes a piece of a style, stage by stage; none where the corrugator alone makes it.
[[nodiscard]] const std::vector<box_styles::Stage>& stages_of(const box_styles::Style& style, std::size_t piece = 0);

/// What is wrong with a route for a piece that is made by these stages, in their order; nothing where it holds them.
/// `what` names the piece: "style `0201`".
[[nodiscard]] std::optional<std::string> route_fault(const plant::Plant& plant,
                                                     const std::vector<box_styles::Stage>& stages,
                                                     const std::string& what, const GivenRoute& route);

/// Reads `[DC1, FG1]`, the route of every piece, or for a style of several pieces `{body: [DC1], lid: [DC1, FG1]}`, of
/// which pieces may be left out. A route holds at most `most_converters` machines, each once, and one for each stage
/// of its piece, in their order; an empty one makes only what needs no converter. Where the style is not known (null),
/// machines are still checked.
void read_route(const fields::Field& field, const plant::Plant& plant, const box_styles::Style* style,
                Request& request);

}  // namespace flutebook::orders
