#include "host/what_if/board_search.hpp"

#include <fmt/format.h>

#include <utility>

#include "host/answers/line_changes.hpp"
#include "host/base/errors.hpp"
#include "host/base/quoted_text.hpp"
#include "host/quoting/quote.hpp"
#include "host/quoting/strength.hpp"
#include "host/what_if/request_on_board.hpp"

namespace flutebook::what_if {

namespace {

using orders::Request;
using what_if_answers::BoardOnTrial;

void expect_estimate(const plant::Plant& plant, const Request& request) {
    if (quoting::has_estimate(plant, request)) return;
    throw InputError(
        InputError::Whose::request,
        {fmt::format("{}: no estimate of the compression: found style {}, and the formula is for slotted "
                     "boxes of one blank, the styles 02..; ask for an --ect",
                     base::place_text(request.places, "style", request.place), base::shown(request.style))});
}

// Why the board does not bear what is asked; empty where it does.
std::string too_weak(const BoardOnTrial& board, const what_if_answers::AskedStrength& asked) {
    if (asked.ect_kn_m && *board.ect_kn_m < *asked.ect_kn_m)
        return fmt::format("its ect is below {:g} kN/m", *asked.ect_kn_m);
    if (asked.bct_kn && *board.compression_n < *asked.bct_kn * 1000)
        return fmt::format("the box is estimated below {:g} kN", *asked.bct_kn);
    return "";
}

void quote_on(const workplace::Workplace& workplace, const Request& request, BoardOnTrial& board, unsigned threads) {
    const answers::RequestAnswer answer =
        quoting::quote(workplace.plant, workplace.engine, request, {threads, std::nullopt});
    if (answer.model_fault) throw ModelError(*answer.model_fault);
    for (const auto& item : answer.quantities) {
        BoardOnTrial::Priced priced{item.quantity(), std::nullopt, std::nullopt};
        if (const auto total = answers::total_of(item))
            priced = {item.quantity(), total->cost, total->price_per_thousand};
        board.quantities.push_back(priced);
    }
}

BoardOnTrial tried(const workplace::Workplace& workplace, const Request& request, const plant::Board& board,
                   const what_if_answers::AskedStrength& asked, unsigned threads) {
    BoardOnTrial result;
    result.board = board.code;
    result.ect_kn_m = board.ect_kn_m;
    if (!board.ect_kn_m) {
        result.why_not = "boards.yaml gives no ect for it";
        return result;
    }
    try {
        const Request own = request_on_board(workplace.plant, request, board.code, request.place);
        if (const auto strength = quoting::estimated_strength(workplace.plant, own))
            result.compression_n = strength->newtons;
        result.why_not = too_weak(result, asked);
        if (result.why_not.empty()) quote_on(workplace, own, result, threads);
    } catch (const InputError& error) {
        result.why_not = fmt::format("{}", fmt::join(error.lines(), "; "));
    }
    return result;
}

}  // namespace

what_if_answers::BoardSearch search_boards(const workplace::Workplace& workplace, const Request& request,
                                           const what_if_answers::AskedStrength& asked, unsigned threads) {
    if (asked.bct_kn) expect_estimate(workplace.plant, request);
    what_if_answers::BoardSearch result{request, asked, {}, {}};
    for (const plant::Board& board : workplace.plant.boards)
        result.boards.push_back(tried(workplace, request, board, asked, threads));
    for (std::size_t i = 0; i < request.quantities.size(); ++i) {
        std::optional<std::size_t> cheapest;
        for (std::size_t b = 0; b < result.boards.size(); ++b) {
            const auto cost = result.boards[b].cost_at(i);
            if (cost && (!cheapest || *cost < *result.boards[*cheapest].cost_at(i))) cheapest = b;
        }
        result.cheapest.push_back(cheapest);
    }
    return result;
}

}  // namespace flutebook::what_if
