// An order laid out on the plant's web: style -> blank -> sheet -> web, every way that the machines allow.
//
// Section by section: the board and its plies, the blank, the routes, and each feasible candidate (corrugator, roll
// width, boxes on a sheet, route). Lengths are mm, as in the files and on the floor; the engine turns them to m.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "host/catalogue/plant.hpp"
#include "host/catalogue/request.hpp"

namespace flutebook::geometry {

/// A ply as it enters the sums, with the price of the request's date.
struct PlyMake {
    std::size_t paper;           // index into Plant::papers
    const catalogue::Flute* flute;  // null for a liner
    double grammage_gsm, take_up, moisture, adhesive_gsm, price_per_kg;
};

struct BoardMake {
    std::vector<PlyMake> plies;  // outside first
    double grammage_gsm;         // combined: papers by take-up, and dry adhesive
    double caliper_mm;           // sum of the flutes' heights
    int media;                   // 1 single wall, 2 double wall
};

/// One box laid flat. Its width runs along the flutes, across the web. It is never turned.
struct Blank {
    double length_mm, width_mm, area_m2;
    double joint_mm;  // length of the maker's joint, 0 if none
};

/// The converters in turn. Step k is converters[k - 1]; `parting` is the step where boxes part from the sheet.
struct Route {
    std::vector<const catalogue::Converter*> converters;
    std::size_t parting;
    std::size_t colours_step;  // the first machine that has the colours asked for; 0 where none are asked

    [[nodiscard]] std::size_t last_step() const { return converters.size(); }
};

/// One way to make the order. `corrugator` and `route` point into the plant and into the layout that owns this.
struct Candidate {
    const catalogue::Corrugator* corrugator;
    const Route* route;
    double roll_width_mm, trim_mm;
    double outs;
    double nx, ny, ups;             // boxes along the chop, across the web, on a sheet
    double chop_mm, slit_mm;        // the sheet
    double sheet_area_m2;
};

/// A way that does not work, named as a person would point at it, and the limit that stopped it.
struct Refused {
    std::string candidate, limit;
};

/// Not copied or moved once made: candidates point into it.
struct Layout {
    BoardMake board;
    Blank blank;
    std::vector<Route> routes;
    std::vector<Candidate> candidates;  // in the order that decides ties: roll, ups, nx, then the files
    std::vector<Refused> refused;

    Layout() = default;
    Layout(const Layout&) = delete;
    Layout& operator=(const Layout&) = delete;
    Layout(Layout&&) = default;
    Layout& operator=(Layout&&) = default;
};

/// "C1, roll 2050 mm, 2 x 3 up, PR1 > DC1": how a candidate is named to people.
[[nodiscard]] std::string name_of(const Candidate& candidate);

[[nodiscard]] BoardMake make_board(const catalogue::Plant& plant, const catalogue::Request& request);
[[nodiscard]] Blank make_blank(const catalogue::Plant& plant, const catalogue::Request& request);
[[nodiscard]] std::vector<Route> make_routes(const catalogue::Plant& plant, const catalogue::Request& request);

/// `plant` and `request` must outlive the layout. An order that fits nowhere has no candidate and says why in
/// `refused`. The request has been read against this plant: its board, route, allowances and prices are there.
[[nodiscard]] Layout lay_out(const catalogue::Plant& plant, const catalogue::Request& request);

}  // namespace flutebook::geometry
