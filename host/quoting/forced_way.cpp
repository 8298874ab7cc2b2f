// The reason why a way is impossible is found on a copy of the plant that has only the corrugators and rolls of that
// way.
#include "host/quoting/forced_way.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

#include "host/base/errors.hpp"
#include "host/base/near_spellings.hpp"
#include "host/base/quoted_text.hpp"
#include "host/geometry/refused.hpp"
#include "host/geometry/sheet.hpp"
#include "host/geometry/web.hpp"

namespace flutebook::quoting {

namespace {

using answers::ForcedWay;
using geometry::Candidate;
using geometry::Refused;

bool is_roll(double roll_width_mm, double asked_mm) {
    return std::abs(roll_width_mm - asked_mm) < geometry::same_length_mm;
}

bool is_of(const ForcedWay& way, const Candidate& candidate) {
    return (!way.corrugator || candidate.corrugator->code == *way.corrugator) &&
           (!way.roll_width_mm || is_roll(candidate.roll_width_mm, *way.roll_width_mm)) &&
           (!way.ups || candidate.ups == *way.ups);
}

// "1, 2 and 4".
std::string listed(const std::vector<double>& numbers) {
    std::string result;
    for (std::size_t i = 0; i < numbers.size(); ++i)
        result += fmt::format("{}{}", i == 0 ? "" : i + 1 == numbers.size() ? " and " : ", ", numbers[i]);
    return result;
}

plant::Plant plant_of(const ForcedWay& way, plant::Plant plant) {
    if (way.corrugator)
        std::erase_if(plant.corrugators,
                      [&](const plant::Corrugator& corrugator) { return corrugator.code != *way.corrugator; });
    if (way.roll_width_mm)
        for (plant::Paper& paper : plant.papers)
            std::erase_if(paper.roll_widths_mm, [&](double width) { return !is_roll(width, *way.roll_width_mm); });
    return plant;
}

// What a board that is bought has of a way, and what it has not.
void add_maker(std::vector<Refused>& result, const ForcedWay& way, const plant::Plant& plant,
               const orders::Request& request) {
    const plant::Board& board = plant.boards[request.board];
    const plant::Corrugator* supplier = plant.supplier_of(board);
    if (way.corrugator && supplier != nullptr && supplier->code != *way.corrugator)
        result.push_back({*way.corrugator, fmt::format("board {} is bought from {}: no corrugator runs it", board.code,
                                                       supplier->code)});
    else if (way.corrugator && supplier == nullptr && plant.find_corrugator(*way.corrugator) == nullptr)
        result.push_back(
            {*way.corrugator, fmt::format("it does not deliver board {}, which is made here", board.code)});
    else if (way.roll_width_mm && supplier != nullptr)
        result.push_back(
            {"roll " + geometry::length_text(*way.roll_width_mm, plant.units),
             fmt::format("board {} is bought as sheets in the size wanted: it runs on no roll", board.code)});
}

void add_roll(std::vector<Refused>& result, const ForcedWay& way, const plant::Plant& plant,
              const orders::Request& request) {
    if (!way.roll_width_mm) return;
    const plant::Board& board = plant.boards[request.board];
    const std::vector<double> widths = geometry::common_roll_widths(plant, board);
    if (std::any_of(widths.begin(), widths.end(), [&](double width) { return is_roll(width, *way.roll_width_mm); }))
        return;
    std::vector<std::string> texts;
    for (const double width : widths) texts.push_back(geometry::length_text(width, plant.units));
    result.push_back({"roll " + geometry::length_text(*way.roll_width_mm, plant.units),
                      fmt::format("the papers of board {} are stocked together in {}", board.code,
                                  texts.empty() ? "no roll width" : fmt::format("{}", fmt::join(texts, ", ")))});
}

void add_ups(std::vector<Refused>& result, const ForcedWay& way, const std::vector<Candidate>& others) {
    if (!way.ups) return;
    std::vector<double> ups;
    for (const Candidate& candidate : others)
        if (std::find(ups.begin(), ups.end(), candidate.ups) == ups.end()) ups.push_back(candidate.ups);
    std::sort(ups.begin(), ups.end());
    if (!ups.empty())
        result.push_back({fmt::format("{} up", *way.ups), "the ways that fit hold " + listed(ups) + " boxes a sheet"});
}

}  // namespace

void expect_way(const plant::Plant& plant, const ForcedWay& way) {
    if (!way.corrugator || plant.find_corrugator(*way.corrugator) != nullptr) return;
    std::vector<std::string> codes;
    for (const plant::Corrugator& corrugator : plant.corrugators) codes.push_back(corrugator.code);
    for (const plant::Corrugator& supplier : plant.suppliers) {
        if (supplier.code == *way.corrugator) return;
        codes.push_back(supplier.code);
    }
    throw InputError(InputError::Whose::request, {fmt::format("--corrugator: unknown corrugator: found {}{}",
                                                              base::shown(*way.corrugator), base::one_of(codes))});
}

geometry::Layout narrowed_to(const ForcedWay& way, const plant::Plant& plant, const orders::Request& request,
                             std::size_t piece, geometry::Layout layout) {
    if (!way.is_any() || layout.candidates.empty()) return layout;
    const ForcedWay of_any_ups{way.corrugator, way.roll_width_mm, std::nullopt};
    std::vector<Candidate>& candidates = layout.candidates;
    std::erase_if(candidates, [&](const Candidate& candidate) { return !is_of(of_any_ups, candidate); });
    const std::vector<Candidate> others = way.ups ? candidates : std::vector<Candidate>();
    std::erase_if(candidates, [&](const Candidate& candidate) { return !is_of(way, candidate); });
    if (!candidates.empty()) return layout;
    add_maker(layout.refused, way, plant, request);
    if (!layout.refused.empty()) return layout;
    add_roll(layout.refused, way, plant, request);
    if (!layout.refused.empty()) return layout;
    add_ups(layout.refused, way, others);
    const plant::Plant only = plant_of(way, plant);
    const geometry::RouteNeeds needs = geometry::route_needs(only, request, piece);
    if (const auto routes = geometry::make_routes(only, request, needs))
        for (Refused& refused : geometry::why_nothing_fits(only, request, needs, layout.blank, *routes))
            layout.refused.push_back(std::move(refused));
    return layout;
}

}  // namespace flutebook::quoting
