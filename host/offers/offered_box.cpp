#include "host/offers/offered_box.hpp"

#include <fmt/format.h>

#include "host/drawings/shown_units.hpp"
#include "host/render/number_text.hpp"

namespace flutebook::offers {

namespace {

using answers::RequestAnswer;
using drawings::ShownUnits;
using orders::Request;

constexpr int weight_digits = 4, weight_decimals = 4, grammage_decimals = 1;
constexpr const char* sheet_style = "0110";

void add_size(render::Facts& facts, const ShownUnits& units, const Request& request, const OfferWords& words) {
    const auto size = [&](const orders::InsideSize& box) {
        std::vector<double> lengths = {box.length_mm, box.width_mm};
        if (box.height_mm > 0) lengths.push_back(box.height_mm);
        return units.lengths(lengths);
    };
    const bool is_sheet = request.style == sheet_style;
    if (request.outside) facts.push_back({words.text("box.outside"), {size(*request.outside)}});
    if (request.inside) facts.push_back({words.text(is_sheet ? "box.size" : "box.inside"), {size(*request.inside)}});
    if (request.outline)
        facts.push_back(
            {words.text("box.size"), {units.lengths({request.outline->length_mm, request.outline->width_mm})}});
}

std::string board_text(const plant::Plant& plant, const plant::Board& board, const OfferWords& words) {
    const ShownUnits units(plant);
    const auto grammage = [&](const plant::Board::Ply& ply) {
        return render::brief_number(units.grammage(plant.paper(ply.paper).grammage_gsm), grammage_decimals);
    };
    if (board.is_bought())
        return words.text(
            "box.sheets",
            {{"flutes", board.flutes}, {"grammage", grammage(board.plies.front())}, {"unit", units.grammage.name}});
    std::vector<std::string> papers;
    for (const plant::Board::Ply& ply : board.plies) papers.push_back(grammage(ply));
    return words.text("box.flutes", {{"flutes", board.flutes},
                                     {"papers", fmt::format("{}", fmt::join(papers, " / "))},
                                     {"unit", units.grammage.name}});
}

std::optional<double> weight_kg(const RequestAnswer& answer) {
    for (std::size_t i = 0; i < answer.quantities.size(); ++i) {
        if (!answer.quantities[i].is_makeable()) continue;
        double kg = 0;
        for (const answers::Quote* quote : blanks_at(answer, i))
            kg += quote->mass.product_kg / answer.quantities[i].quantity();
        return kg;
    }
    return std::nullopt;
}

}  // namespace

std::string counted_in(const RequestAnswer& answer) {
    if (!answer.pieces.empty()) return "sets";
    return answer.request.style == sheet_style ? "sheets" : "boxes";
}

std::vector<const answers::Quote*> blanks_at(const RequestAnswer& answer, std::size_t quantity) {
    if (answer.quantities[quantity].quote) return {&*answer.quantities[quantity].quote};
    std::vector<const answers::Quote*> result;
    for (const RequestAnswer::Piece& piece : answer.pieces)
        if (piece.quantities[quantity].quote) result.push_back(&*piece.quantities[quantity].quote);
    return result;
}

render::Facts box_facts(const plant::Plant& plant, const RequestAnswer& answer, const OfferWords& words) {
    const Request& request = answer.request;
    const ShownUnits units(plant);
    render::Facts facts;
    facts.push_back({words.text("box.style"), {request.outline ? words.text("box.outline") : request.style}});
    add_size(facts, units, request, words);
    facts.push_back({words.text("box.board"), {board_text(plant, plant.boards[request.board], words)}});
    if (request.colours > 0)
        facts.push_back({words.text("box.printing"),
                         {request.colours == 1
                              ? words.text("box.one_colour")
                              : words.text("box.colours", {{"colours", render::number_text(request.colours, 0)}})}});
    if (const auto kg = weight_kg(answer)) {
        const std::string of = counted_in(answer) == "sets"     ? "box.set_weight"
                               : counted_in(answer) == "sheets" ? "box.sheet_weight"
                                                                : "box.box_weight";
        facts.push_back(
            {words.text(of),
             {render::significant_number(units.mass(*kg), weight_digits, weight_decimals) + " " + units.mass.name}});
    }
    return facts;
}

}  // namespace flutebook::offers
