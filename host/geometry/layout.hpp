// An order laid out on the plant's web: style -> blank -> sheet -> web, every way that the machines allow.
//
// Section by section: the board and its plies, the blank, the routes, and each feasible candidate (corrugator, roll
// width, boxes on a sheet, route). Lengths are mm, as in the files and on the floor; the engine turns them to m.
#pragma once

#include <string>
#include <vector>

#include "host/blanks/blank.hpp"
#include "host/geometry/board.hpp"
#include "host/geometry/refused.hpp"
#include "host/geometry/route.hpp"
#include "host/orders/order_record.hpp"
#include "host/orders/request.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::geometry {

/// One way to make the order. `corrugator` and `route` point into the plant and into the layout that owns this.
struct Candidate : orders::SheetCut {
    const plant::Corrugator* corrugator;
    const Route* route;
    double trim_mm;
    double nx, ny;  // boxes along the chop, across the web
    double sheet_area_m2;

    /// What of it stays with a quote and an order.
    [[nodiscard]] const orders::SheetCut& cut() const { return *this; }

    /// Codes of the route's converters, in turn.
    [[nodiscard]] std::vector<std::string> route_codes() const;
};

/// Moved, never copied: candidates point into `routes`, whose elements stay where they are when it is moved.
struct Layout {
    BoardMake board;
    blanks::BlankPiece piece;
    blanks::Blank blank;
    std::vector<Route> routes;
    std::vector<Candidate> candidates;  // in the order that decides ties: roll, ups, nx, then the files
    std::vector<Refused> refused;       // empty where there is a candidate

    Layout() = default;
    Layout(const Layout&) = delete;
    Layout& operator=(const Layout&) = delete;
    Layout(Layout&&) = default;
    Layout& operator=(Layout&&) = default;
};

/// More ways than this to make one order are an error in the plant's files, and the order is refused with it.
constexpr std::size_t most_candidates = 2'000'000;

/// "C1, roll 2050 mm, 2 x 3 up, PR1 > DC1": how a candidate is named to people, in the plant's units. Boxes along the
/// chop come first; where no machine parts blanks it is one box a sheet and not said.
[[nodiscard]] std::string name_of(const Candidate& candidate, plant::Units units = plant::Units::metric);

/// `plant` and `request` must outlive the layout. An order that fits nowhere has no candidate and says why in
/// `refused`. The request has been read against this plant: its board, route, allowances and prices are there.
/// Any thread; allocates by order, not by candidate. `piece` is an index of blanks::pieces_of(): each blank of a set
/// has a layout of its own.
[[nodiscard]] Layout lay_out(const plant::Plant& plant, const orders::Request& request, std::size_t piece = 0);

/// A blank of the request whose figures are known, and what must make it.
struct MeasuredPiece {
    blanks::BlankPiece piece;
    blanks::Blank blank;
    RouteNeeds needs;
};

/// The same of such a blank: no style is drawn.
[[nodiscard]] Layout lay_out(const plant::Plant& plant, const orders::Request& request, MeasuredPiece measured);

}  // namespace flutebook::geometry
