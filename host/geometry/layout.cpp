#include "host/geometry/layout.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <utility>

#include "host/geometry/refused.hpp"
#include "host/geometry/sheet.hpp"
#include "host/geometry/web.hpp"
#include "host/plant/maker_text.hpp"

namespace flutebook::geometry {

using orders::Request;
using plant::Converter;
using plant::Corrugator;
using plant::Plant;
using plant::Units;

namespace {

// What one corrugator and one route can hold together, whatever the roll.
struct RouteCandidates {
    const Corrugator* corrugator;
    const Route* route;
    SheetRule rule;
    Boxes along, across;
};

struct Ups {
    double nx, ny;
    [[nodiscard]] double boxes() const { return nx * ny; }
};

bool has_colours(const Route& route, const Request& request) {
    return request.colours <= 0 || route.colours_step != 0;
}

void narrow_to_machines(RouteCandidates& way) {
    for (std::size_t step = 1; step <= way.route->parting; ++step) {
        const Converter& converter = *way.route->converters[step - 1];
        way.along = narrowed(way.along, way.rule.along, converter.length_mm);
        way.across = narrowed(way.across, way.rule.across, converter.width_mm);
    }
}

// In the order of the files: corrugators, then routes.
std::vector<RouteCandidates> find_ways(const Plant& plant, const Request& request, const Layout& layout) {
    std::vector<RouteCandidates> open;
    for (const Route& route : layout.routes) {
        if (route.even_flaps != nullptr || !has_colours(route, request) || !takes_blank(route, layout.blank)) continue;
        const SheetRule rule = sheet_rule(layout.blank, route);
        RouteCandidates way = {nullptr, &route, rule, rule.allowed(), rule.allowed()};
        narrow_to_machines(way);
        open.push_back(way);
    }
    std::vector<RouteCandidates> ways;
    for (const Corrugator* corrugator : makers_of(plant, plant.boards[request.board]))
        for (RouteCandidates way : open) {
            way.corrugator = corrugator;
            way.along = narrowed(way.along, way.rule.along, corrugator->chop_mm);
            way.across = narrowed(way.across, way.rule.across, corrugator->slit_mm);
            if (!way.along.none() && !way.across.none()) ways.push_back(way);
        }
    return ways;
}

// Every nx and ny that some way may hold, fewer boxes first, then the smaller nx; nothing where there are too many.
std::optional<std::vector<Ups>> find_ups(const std::vector<RouteCandidates>& ways) {
    double along = 0, across = 0, ups_max = 0;
    for (const RouteCandidates& way : ways) {
        along = std::max(along, way.along.last);
        across = std::max(across, way.across.last);
        ups_max = std::max(ups_max, way.rule.ups_max);
    }
    std::vector<Ups> found;
    for (double nx = 1; nx <= along; ++nx)
        for (double ny = 1; ny <= across && nx * ny <= ups_max; ++ny) {
            found.push_back({nx, ny});
            if (found.size() > most_candidates) return std::nullopt;
        }
    std::sort(found.begin(), found.end(),
              [](const Ups& a, const Ups& b) { return a.boxes() != b.boxes() ? a.boxes() < b.boxes() : a.nx < b.nx; });
    return found;
}

void add_candidate(const RouteCandidates& way, const Ups& ups, double roll_width_mm,
                   std::vector<Candidate>& candidates) {
    if (ups.boxes() > way.rule.ups_max || !way.along.holds(ups.nx) || !way.across.holds(ups.ny)) return;
    const double slit_mm = way.rule.across.length_mm(ups.ny);
    const WebLayout web = cut_web(*way.corrugator, roll_width_mm, slit_mm);
    if (web.outs < 1) return;
    const double chop_mm = way.rule.along.length_mm(ups.nx);
    const orders::SheetCut cut{roll_width_mm, web.outs, ups.boxes(), chop_mm, slit_mm};
    candidates.push_back(
        {cut, way.corrugator, way.route, web.trim_mm, ups.nx, ups.ny, /*sheet_area_m2=*/chop_mm * slit_mm * 1e-6});
}

// The loops run in the order that decides ties, so nothing is sorted afterwards. Nothing where there are too many.
std::optional<std::vector<Candidate>> find_candidates(const std::vector<RouteCandidates>& ways,
                                                      const std::vector<double>& roll_widths_mm) {
    std::vector<Candidate> candidates;
    const std::optional<std::vector<Ups>> all_ups = find_ups(ways);
    if (!all_ups) return std::nullopt;
    std::vector<RouteCandidates> on_roll;
    on_roll.reserve(ways.size());
    for (const double roll_width_mm : roll_widths_mm) {
        on_roll.clear();
        for (const RouteCandidates& way : ways)
            if (is_within(roll_width_mm, way.corrugator->roll_width_mm)) on_roll.push_back(way);
        for (const Ups& ups : *all_ups) {
            for (const RouteCandidates& way : on_roll) add_candidate(way, ups, roll_width_mm, candidates);
            if (candidates.size() > most_candidates) return std::nullopt;
        }
    }
    return candidates;
}

// Sheets that are bought are ordered in the size wanted: each is as wide as its own roll.
std::optional<std::vector<Candidate>> find_bought(const std::vector<RouteCandidates>& ways) {
    std::vector<Candidate> candidates;
    const std::optional<std::vector<Ups>> all_ups = find_ups(ways);
    if (!all_ups) return std::nullopt;
    for (const Ups& ups : *all_ups)
        for (const RouteCandidates& way : ways) {
            add_candidate(way, ups, way.rule.across.length_mm(ups.ny), candidates);
            if (candidates.size() > most_candidates) return std::nullopt;
        }
    std::stable_sort(candidates.begin(), candidates.end(),
                     [](const Candidate& a, const Candidate& b) { return a.roll_width_mm < b.roll_width_mm; });
    return candidates;
}

std::vector<Refused> too_many_ways() {
    return {{"every way", fmt::format("there are more than {} ways to lay the order out; lower ups_max of die "
                                      "cutters and slitters, or stock fewer roll widths",
                                      most_candidates)}};
}

std::vector<Refused> too_many_routes() {
    return {{"every way", fmt::format("there are more than {} routes through the plant's machines; give the route in "
                                      "the request",
                                      most_routes)}};
}

}  // namespace

std::vector<std::string> Candidate::route_codes() const {
    std::vector<std::string> result;
    for (const auto* converter : route->converters) result.push_back(converter->code);
    return result;
}

std::string name_of(const Candidate& candidate, Units units) {
    const std::string ups =
        candidate.route->parting_machine() != nullptr ? fmt::format("{} x {} up, ", candidate.nx, candidate.ny) : "";
    const std::string name = name_of(*candidate.route);
    const std::string roll =
        candidate.corrugator->is_supplier ? "" : "roll " + length_text(candidate.roll_width_mm, units) + ", ";
    return fmt::format("{}, {}{}{}", plant::maker_text(*candidate.corrugator), roll, ups, name);
}

Layout lay_out(const Plant& plant, const Request& request, std::size_t piece) {
    return lay_out(plant, request,
                   {blanks::pieces_of(plant, request).at(piece), blanks::make_blank(plant, request, piece),
                    route_needs(plant, request, piece)});
}

Layout lay_out(const Plant& plant, const Request& request, MeasuredPiece measured) {
    Layout layout;
    layout.board = make_board(plant, request);
    layout.piece = std::move(measured.piece);
    layout.blank = std::move(measured.blank);
    const RouteNeeds& needs = measured.needs;
    std::optional<std::vector<Route>> routes = make_routes(plant, request, needs);
    if (!routes) {
        layout.refused = too_many_routes();
        return layout;
    }
    layout.routes = std::move(*routes);
    const std::vector<RouteCandidates> ways = find_ways(plant, request, layout);
    const plant::Board& board = plant.boards[request.board];
    std::optional<std::vector<Candidate>> candidates =
        board.is_bought() ? find_bought(ways) : find_candidates(ways, common_roll_widths(plant, board));
    if (!candidates)
        layout.refused = too_many_ways();
    else if (candidates->empty())
        layout.refused = why_nothing_fits(plant, request, needs, layout.blank, layout.routes);
    else
        layout.candidates = std::move(*candidates);
    return layout;
}

}  // namespace flutebook::geometry
