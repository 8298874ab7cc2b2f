// The converters an order may run through after the corrugator.
//
// A style says what makes it stage by stage. A route that the request leaves out is every way of taking one machine for
// each stage in turn, with what else the order needs put in front: a printer where no machine of the way has the
// colours, a die cutter where the folder-gluer cuts all flaps of a row to one depth and the blank has others.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "host/blanks/flat.hpp"
#include "host/orders/request.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::geometry {

/// What the machines of an order's route must be able to do.
struct RouteNeeds {
    std::vector<box_styles::Stage> stages;  // none: the corrugator alone makes it
    bool has_unequal_flaps = false;         // some row of flaps, slot beside slot, has more than one depth
    std::size_t piece = 0;                  // an index of blanks::pieces_of()
};

/// Of a request that blanks::make_blank() takes, by its style. `piece` is an index of blanks::pieces_of().
[[nodiscard]] RouteNeeds route_needs(const plant::Plant& plant, const orders::Request& request, std::size_t piece = 0);

/// Whether two cells of the drawn piece that hang side by side, a slot between them, have unequal depths.
[[nodiscard]] bool has_unequal_flaps(const box_styles::StylePiece& piece, const blanks::FlatBlank& blank);

/// The converters in turn. Step k is converters[k - 1]; `parting` is the step where boxes part from the sheet.
struct Route {
    std::vector<const plant::Converter*> converters;  // point into the plant
    std::size_t parting;                              // the first die cutter or slitter, else the last step
    std::size_t
        colours_step;  // the first machine that has the colours asked for; 0 where none are asked or none has them
    const plant::Converter* even_flaps =
        nullptr;  // cannot cut the flaps of this order; null where none stands in the way

    [[nodiscard]] std::size_t last_step() const { return converters.size(); }
    /// The die cutter or slitter at which boxes part; null where the sheet is the blank.
    [[nodiscard]] const plant::Converter* parting_machine() const;
};

/// More ways than this to route one order are too many to try.
inline constexpr std::size_t most_routes = 10'000;

/// The route that the request gives for the piece; left out, every way of taking one machine for each stage in turn, in
/// the order of the plant, no machine twice. Empty where some stage has no machine; nothing where there are too many
/// ways. `plant` must outlive what is returned.
[[nodiscard]] std::optional<std::vector<Route>> make_routes(const plant::Plant& plant, const orders::Request& request,
                                                            const RouteNeeds& needs);

/// "PR1 > DC1"; "no converter" where there is none.
[[nodiscard]] std::string name_of(const Route& route);

}  // namespace flutebook::geometry
