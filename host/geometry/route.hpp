// The converters an order may run through after the corrugator.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "host/orders/request.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::geometry {

/// The converters in turn. Step k is converters[k - 1]; `parting` is the step where boxes part from the sheet.
struct Route {
    std::vector<const plant::Converter*> converters;  // point into the plant
    std::size_t parting;                              // the first die cutter, else the last step
    std::size_t
        colours_step;  // the first machine that has the colours asked for; 0 where none are asked or none has them

    [[nodiscard]] std::size_t last_step() const { return converters.size(); }
    /// Null where no die cutter parts the boxes.
    [[nodiscard]] const plant::Converter* die_cutter() const;
};

/// The route that the request gives; left out, each single converter of the kind that makes its style, in the order of
/// the plant, or the one empty route where the corrugator alone makes it. `plant` must outlive what is returned.
/// `piece` is an index of pieces_of().
[[nodiscard]] std::vector<Route> make_routes(const plant::Plant& plant, const orders::Request& request,
                                             std::size_t piece = 0);

/// "PR1 > DC1"; "no converter" where there is none.
[[nodiscard]] std::string name_of(const Route& route);

}  // namespace flutebook::geometry
