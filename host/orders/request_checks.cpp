// Checks of a request against the plant. Nothing here reads; all fields are known to be there.
#include "host/orders/request_checks.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "host/base/quoted_text.hpp"
#include "host/plant/converter_kind.hpp"

namespace flutebook::orders {

namespace {}  // namespace

void check_route(const plant::Field& field, const std::vector<std::size_t>& route, const plant::Plant& plant,
                 const Style& style) {
    if (!style.made_by) return;
    const bool has_maker = std::any_of(route.begin(), route.end(), [&](std::size_t machine) {
        return plant.converters[machine].kind == *style.made_by;
    });
    if (has_maker) return;
    field.complain(fmt::format("{} {}: expected a {} for style {}", route.empty() ? "an empty route" : "a route",
                               route.empty() ? "for a box" : "that cannot make the box",
                               plant::in_words(*style.made_by), base::shown(style.code)));
}

void check_allowance(const plant::Field& field, const plant::Plant& plant, const plant::Board& board,
                     const Style& style) {
    if (style.shape != Style::Shape::slotted_box || plant.find_allowance(board.flutes) != nullptr) return;
    field.complain(fmt::format("no allowances for flute {}: board {} cannot make style {}; add them to flutes.yaml",
                               base::shown(board.flutes), base::shown(board.code), base::shown(style.code)));
}

void check_prices(const plant::Field& field, const plant::Plant& plant, const plant::Board& board, base::Date day) {
    std::vector<std::size_t> told;
    for (const auto& ply : board.plies) {
        const auto& paper = plant.papers[ply.paper];
        if (paper.price_on(day) != nullptr || std::find(told.begin(), told.end(), ply.paper) != told.end()) continue;
        told.push_back(ply.paper);
        field.complain(fmt::format("no price on {}: paper {} of board {} is priced from {} on", base::to_string(day),
                                   base::shown(paper.code), base::shown(board.code),
                                   base::to_string(paper.prices.front().from)));
    }
}

}  // namespace flutebook::orders
