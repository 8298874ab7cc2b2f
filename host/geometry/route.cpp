#include "host/geometry/route.hpp"

#include <flutebook/plugin.h>

#include <algorithm>
#include <cassert>
#include <cmath>
#include <utility>

#include "host/blanks/blank.hpp"
#include "host/orders/route_reader.hpp"
#include "host/plant/machine_list.hpp"

namespace flutebook::geometry {

using orders::Request;
using plant::Converter;
using plant::Plant;

namespace {

static_assert(orders::most_converters + 2 == FLUTEBOOK_MOST_STEPS, "the corrugator and dispatch stand around them");

using Machines = std::vector<const Converter*>;

std::size_t first_parting(const Machines& machines) {
    for (std::size_t i = 0; i < machines.size(); ++i)
        if (box_styles::parts_sheets(machines[i]->kind)) return i + 1;
    return 0;
}

std::size_t first_with_colours(const Machines& machines, double colours) {
    if (colours <= 0) return 0;
    for (std::size_t i = 0; i < machines.size(); ++i)
        if (machines[i]->colours >= colours) return i + 1;
    return 0;
}

// A die cutter ahead has cut the flaps already.
const Converter* even_flap_cutter(const Machines& machines) {
    for (const Converter* machine : machines) {
        if (machine->kind == Converter::Kind::die_cutter) return nullptr;
        if (machine->kind == Converter::Kind::folder_gluer) return machine->cuts_flaps ? nullptr : machine;
    }
    return nullptr;
}

Route make_route(Machines machines, const Request& request, const RouteNeeds& needs) {
    const std::size_t parting = first_parting(machines);
    const std::size_t last_step = machines.size();
    Route route{.converters = {}, .parting = parting != 0 ? parting : last_step, .colours_step = 0};
    route.colours_step = first_with_colours(machines, request.colours);
    route.even_flaps = needs.has_unequal_flaps ? even_flap_cutter(machines) : nullptr;
    route.converters = std::move(machines);
    return route;
}

Route given_route(const Plant& plant, const Request& request, const RouteNeeds& needs) {
    const orders::GivenRoute& given = *request.route_of(needs.piece);
    Machines machines;
    machines.reserve(given.size());
    for (const std::size_t index : given) machines.push_back(&plant.converters[index]);
    return make_route(std::move(machines), request, needs);
}

// The way with each machine of a kind, one that has the colours, put ahead of `ahead_of`; the way alone where the plant
// has no such machine free.
std::vector<Machines> with_each(const Plant& plant, const Machines& way, Converter::Kind kind,
                                const Converter* ahead_of, double colours) {
    std::vector<Machines> ways;
    for (const Converter& machine : plant.converters) {
        const bool is_free = std::find(way.begin(), way.end(), &machine) == way.end();
        if (machine.kind != kind || machine.colours < colours || !is_free) continue;
        Machines& longer = ways.emplace_back(way);
        longer.insert(std::find(longer.begin(), longer.end(), ahead_of), &machine);
    }
    if (ways.empty()) ways.push_back(way);
    return ways;
}

// Cells of one row are as deep as the row, but for those that give their own depth.
bool may_have_unequal_flaps(const box_styles::StylePiece& piece) {
    const bool has_slot = std::any_of(
        piece.borders.begin(), piece.borders.end(),
        [](const box_styles::StyleBorder& border) { return border.kind == box_styles::StyleBorder::Kind::slot; });
    return has_slot && std::any_of(piece.cells.begin(), piece.cells.end(),
                                   [](const box_styles::StyleCell& cell) { return cell.depth.has_value(); });
}

constexpr double same_depth_mm = 1e-6;

// How far a cell reaches from the crease that it hangs on.
double depth_mm(const blanks::FlatCell& cell) {
    const blanks::Point& from = cell.hinge.from;
    const double x = cell.hinge.to.x - from.x, y = cell.hinge.to.y - from.y;
    double deepest = 0;
    for (const blanks::Point& corner : cell.outline)
        deepest = std::max(deepest, std::abs(x * (corner.y - from.y) - y * (corner.x - from.x)) / std::hypot(x, y));
    return deepest;
}

// Every way of taking one machine for each stage, in the order of the plant, and what else the order needs in front.
class RouteFinder {
public:
    RouteFinder(const Plant& plant, const Request& request, const RouteNeeds& needs)
        : plant_(plant), request_(request), needs_(needs) {}

    std::optional<std::vector<Route>> find() {
        take_stage(0);
        if (too_many()) return std::nullopt;
        return std::move(routes_);
    }

private:
    // Where stages share their machines, a try may end without a route.
    static constexpr std::size_t most_tries = 10 * most_routes;

    [[nodiscard]] bool too_many() const { return routes_.size() > most_routes || tries_ > most_tries; }

    [[nodiscard]] bool may_take(const Converter& machine, const box_styles::Stage& kinds) const {
        return std::find(kinds.begin(), kinds.end(), machine.kind) != kinds.end() &&
               std::find(taken_.begin(), taken_.end(), &machine) == taken_.end();
    }

    void take_stage(std::size_t stage) {
        if (stage == needs_.stages.size()) return add_way();
        for (const Converter& machine : plant_.converters) {
            if (!may_take(machine, needs_.stages[stage])) continue;
            if (too_many()) return;
            ++tries_;
            taken_.push_back(&machine);
            take_stage(stage + 1);
            taken_.pop_back();
        }
    }

    void add_way() {
        for (const Machines& way : cutting_flaps())
            for (Machines& printed : printing(way)) routes_.push_back(make_route(std::move(printed), request_, needs_));
    }

    [[nodiscard]] std::vector<Machines> cutting_flaps() const {
        const Converter* even = needs_.has_unequal_flaps ? even_flap_cutter(taken_) : nullptr;
        if (even == nullptr) return {taken_};
        return with_each(plant_, taken_, Converter::Kind::die_cutter, even, 0);
    }

    [[nodiscard]] std::vector<Machines> printing(const Machines& way) const {
        if (request_.colours <= 0 || first_with_colours(way, request_.colours) != 0) return {way};
        return with_each(plant_, way, Converter::Kind::printer, way.empty() ? nullptr : way.front(), request_.colours);
    }

    const Plant& plant_;
    const Request& request_;
    const RouteNeeds& needs_;
    Machines taken_;
    std::vector<Route> routes_;
    std::size_t tries_ = 0;
};

}  // namespace

bool has_unequal_flaps(const box_styles::StylePiece& piece, const blanks::FlatBlank& blank) {
    return std::any_of(piece.borders.begin(), piece.borders.end(), [&](const box_styles::StyleBorder& border) {
        const blanks::FlatCell &first = blank.cells.at(border.first), &second = blank.cells.at(border.second);
        return border.kind == box_styles::StyleBorder::Kind::slot && first.parent && second.parent &&
               std::abs(depth_mm(first) - depth_mm(second)) > same_depth_mm;
    });
}

RouteNeeds route_needs(const Plant& plant, const Request& request, std::size_t piece) {
    const box_styles::Style* style = plant.find_style(request.style);
    assert(style && "a request is read only in a style that is there");
    RouteNeeds needs;
    needs.piece = piece;
    needs.stages = orders::stages_of(*style, piece);
    if (!style->is_outline && may_have_unequal_flaps(style->pieces.at(piece)))
        needs.has_unequal_flaps =
            has_unequal_flaps(style->pieces[piece], blanks::draw_request(plant, request).at(piece));
    return needs;
}

const Converter* Route::parting_machine() const {
    if (parting == 0 || !box_styles::parts_sheets(converters[parting - 1]->kind)) return nullptr;
    return converters[parting - 1];
}

std::optional<std::vector<Route>> make_routes(const Plant& plant, const Request& request, const RouteNeeds& needs) {
    if (request.route_of(needs.piece)) return std::vector<Route>{given_route(plant, request, needs)};
    return RouteFinder(plant, request, needs).find();
}

std::string name_of(const Route& route) {
    if (route.converters.empty()) return "no converter";
    std::string name;
    for (const Converter* converter : route.converters) {
        if (!name.empty()) name += " > ";
        name += converter->code;
    }
    return name;
}

}  // namespace flutebook::geometry
