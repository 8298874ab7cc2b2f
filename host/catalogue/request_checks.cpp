// Checks of a request against the plant. Nothing here reads; all fields are known to be there.
#include "host/catalogue/request_checks.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "host/catalogue/shown.hpp"

namespace flutebook::catalogue {

namespace {

const char* name_of(Converter::Kind kind) {
    switch (kind) {
        case Converter::Kind::printer:
            return "printer";
        case Converter::Kind::die_cutter:
            return "die cutter";
        case Converter::Kind::folder_gluer:
            break;
    }
    return "folder-gluer";
}

}  // namespace

void check_route(const Field& field, const std::vector<std::size_t>& route, const Plant& plant, const Style& style) {
    if (!style.made_by) return;
    const bool has_maker = std::any_of(route.begin(), route.end(), [&](std::size_t machine) {
        return plant.converters[machine].kind == *style.made_by;
    });
    if (has_maker) return;
    field.complain(fmt::format("{} {}: expected a {} for style {}", route.empty() ? "an empty route" : "a route",
                               route.empty() ? "for a box" : "that cannot make the box", name_of(*style.made_by),
                               shown(style.code)));
}

void check_allowance(const Field& field, const Plant& plant, const Board& board, const Style& style) {
    if (style.shape != Style::Shape::slotted_box || plant.find_allowance(board.flutes) != nullptr) return;
    field.complain(fmt::format("no allowances for flute {}: board {} cannot make style {}; add them to flutes.yaml",
                               shown(board.flutes), shown(board.code), shown(style.code)));
}

void check_prices(const Field& field, const Plant& plant, const Board& board, Date day) {
    std::vector<std::size_t> told;
    for (const auto& ply : board.plies) {
        const auto& paper = plant.papers[ply.paper];
        if (paper.price_on(day) != nullptr || std::find(told.begin(), told.end(), ply.paper) != told.end()) continue;
        told.push_back(ply.paper);
        field.complain(fmt::format("no price on {}: paper {} of board {} is priced from {} on", to_string(day),
                                   shown(paper.code), shown(board.code), to_string(paper.prices.front().from)));
    }
}

}  // namespace flutebook::catalogue
