#include "host/orders/route_reader.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "host/base/quoted_text.hpp"
#include "host/plant/machine_list.hpp"

namespace flutebook::orders {

namespace {

template <typename T>
std::vector<std::string> codes_in(const std::vector<T>& machines) {
    std::vector<std::string> codes;
    for (const auto& machine : machines) codes.push_back(machine.code);
    return codes;
}

bool has_kind(const plant::Plant& plant, const box_styles::Stage& stage, std::size_t machine) {
    return std::find(stage.begin(), stage.end(), plant.converters[machine].kind) != stage.end();
}

// The first stage that no machine makes behind those of the stages before it.
std::optional<std::size_t> missing_stage(const plant::Plant& plant, const std::vector<box_styles::Stage>& stages,
                                         const GivenRoute& route) {
    std::size_t stage = 0;
    for (const std::size_t machine : route)
        if (stage < stages.size() && has_kind(plant, stages[stage], machine)) ++stage;
    return stage < stages.size() ? std::optional(stage) : std::nullopt;
}

std::string why_missing(const plant::Plant& plant, const std::vector<box_styles::Stage>& stages, std::size_t missing,
                        const GivenRoute& route) {
    const auto words = box_styles::in_words(stages[missing]);
    const auto early = std::find_if(route.begin(), route.end(),
                                    [&](std::size_t machine) { return has_kind(plant, stages[missing], machine); });
    if (early == route.end()) return fmt::format("the route has no {}", words);
    return fmt::format("{} stands too early: put a {} behind the {}", plant.converters[*early].code, words,
                       box_styles::in_words(stages[missing - 1]));
}

class RouteReader {
public:
    RouteReader(const plant::Plant& plant, const box_styles::Style* style)
        : plant_(plant),
          style_(style),
          converters_(codes_in(plant.converters)),
          corrugators_(codes_in(plant.corrugators)) {}

    GivenRoute of_every_piece(const fields::Field& list) const {
        GivenRoute route = read_machines(list);
        if (style_ == nullptr || !are_all_read(list, route)) return route;
        for (std::size_t piece = 0; piece < std::max<std::size_t>(style_->pieces.size(), 1); ++piece)
            if (const auto fault = fault_of(route, piece)) {
                list.complain(*fault + (is_set() ? "; a route of its own for each piece is " + pieces_text() : ""));
                break;
            }
        return route;
    }

    std::vector<std::optional<GivenRoute>> by_piece(const fields::Field& map) const {
        std::vector<std::optional<GivenRoute>> routes(style_ == nullptr ? 0 : style_->pieces.size());
        for (const fields::Field& entry : map.entries_at_least_one()) {
            const auto piece = style_ == nullptr ? std::nullopt : read_piece(entry);
            GivenRoute route = read_machines(entry);
            if (!piece) continue;
            const auto fault = are_all_read(entry, route) ? fault_of(route, *piece) : std::nullopt;
            if (fault) entry.complain(*fault);
            routes[*piece] = std::move(route);
        }
        return routes;
    }

private:
    // Those that are known.
    GivenRoute read_machines(const fields::Field& list) const {
        GivenRoute route;
        for (const auto& item : list.items()) {
            const auto machine = read_machine(item);
            if (!machine) continue;
            if (std::find(route.begin(), route.end(), *machine) != route.end())
                item.complain("a machine twice: found " + base::shown(item.text()) +
                              ", expected each machine at most once");
            else
                route.push_back(*machine);
        }
        if (route.size() > most_converters)
            list.complain(
                fmt::format("too long: found {} machines, expected at most {}", route.size(), most_converters));
        return route;
    }

    std::optional<std::size_t> read_machine(const fields::Field& item) const {
        const auto code = item.text();
        const auto found = std::find(converters_.begin(), converters_.end(), code);
        if (found != converters_.end()) return static_cast<std::size_t>(found - converters_.begin());
        if (std::find(corrugators_.begin(), corrugators_.end(), code) != corrugators_.end())
            item.complain("a corrugator: found " + base::shown(code) +
                          ", expected converters only; every route starts at a corrugator");
        else
            item.complain_unknown_code("converter", code, converters_);
        return std::nullopt;
    }

    std::optional<std::size_t> read_piece(const fields::Field& entry) const {
        std::vector<std::string> names;
        for (const box_styles::StylePiece& piece : style_->pieces) names.push_back(piece.name);
        const auto found = std::find(names.begin(), names.end(), entry.key());
        if (found != names.end()) return static_cast<std::size_t>(found - names.begin());
        entry.about_key().complain_unknown_code("piece of style " + base::shown(style_->code), entry.key(), names);
        return std::nullopt;
    }

    static bool are_all_read(const fields::Field& list, const GivenRoute& route) {
        return list.is_list() && list.items().size() == route.size();
    }

    [[nodiscard]] bool is_set() const { return style_->pieces.size() > 1; }

    [[nodiscard]] std::optional<std::string> fault_of(const GivenRoute& route, std::size_t piece) const {
        std::string what = "style " + base::shown(style_->code);
        if (is_set()) what += ", piece " + base::shown(style_->pieces[piece].name);
        return route_fault(plant_, stages_of(*style_, piece), what, route);
    }

    // "`{body: [...], lid: [...]}`".
    [[nodiscard]] std::string pieces_text() const {
        std::string result;
        for (const box_styles::StylePiece& piece : style_->pieces)
            result += (result.empty() ? "" : ", ") + piece.name + ": [...]";
        return "`{" + result + "}`";
    }

    const plant::Plant& plant_;
    const box_styles::Style* style_;
    std::vector<std::string> converters_, corrugators_;
};

}  // namespace

const std::vector<box_styles::Stage>& stages_of(const box_styles::Style& style, std::size_t piece) {
    static const std::vector<box_styles::Stage> of_drawing{{plant::Converter::Kind::die_cutter}};
    return style.is_outline ? of_drawing : style.pieces.at(piece).made_by;
}

std::optional<std::string> route_fault(const plant::Plant& plant, const std::vector<box_styles::Stage>& stages,
                                       const std::string& what, const GivenRoute& route) {
    const auto missing = missing_stage(plant, stages, route);
    if (!missing) return std::nullopt;
    const auto expected = fmt::format("expected a {} for {}", box_styles::in_words(stages), what);
    if (route.empty()) return "an empty route for a box: " + expected;
    if (stages.size() == 1) return "a route that cannot make the box: " + expected;
    return fmt::format("a route that cannot make the box: {}; {}", expected,
                       why_missing(plant, stages, *missing, route));
}

void read_route(const fields::Field& field, const plant::Plant& plant, const box_styles::Style* style,
                Request& request) {
    const RouteReader reader(plant, style);
    if (!field.is_map()) {
        request.route = reader.of_every_piece(field);
        return;
    }
    if (style != nullptr && style->pieces.size() < 2)
        return field.complain("a route by piece for a style of one piece: found a map for style " +
                              base::shown(style->code) + ", expected a list of machines such as `[DC1]`");
    request.piece_routes = reader.by_piece(field);
}

}  // namespace flutebook::orders
