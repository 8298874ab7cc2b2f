#include "host/geometry/board.hpp"

#include <cassert>

namespace flutebook::geometry {

using base::Date;
using orders::Request;
using plant::Board;
using plant::Flute;
using plant::Paper;
using plant::Plant;

namespace {

double adhesive_gsm(const Flute& flute, const Board::Ply& ply) {
    return flute.single_facer_gsm + (ply.has_second_liner ? flute.double_backer_gsm : 0);
}

PlyMake make_ply(const Plant& plant, const Board::Ply& ply, Date day) {
    const Paper& paper = plant.paper(ply.paper);
    const Flute* flute = ply.flute ? &plant.flutes[*ply.flute] : nullptr;
    const Paper::Price* price = paper.price_on(day);
    assert(price && "a request is read only where every paper of its board has a price on its day");
    return {.paper = ply.paper,
            .flute = flute,
            .grammage_gsm = paper.grammage_gsm,
            .take_up = flute ? flute->take_up : 1,
            .moisture = paper.moisture,
            .adhesive_gsm = flute ? adhesive_gsm(*flute, ply) : 0,
            .price_per_kg = price->per_tonne / 1000};
}

}  // namespace

BoardMake make_board(const Plant& plant, const Request& request) {
    const Board& asked = plant.boards[request.board];
    BoardMake board = {
        .plies = {}, .grammage_gsm = 0, .caliper_mm = plant::caliper_mm(plant, asked), .media = asked.media()};
    board.plies.reserve(asked.plies.size());
    for (const Board::Ply& asked_ply : asked.plies) {
        const PlyMake& ply = board.plies.emplace_back(make_ply(plant, asked_ply, request.date));
        board.grammage_gsm += ply.grammage_gsm * ply.take_up + ply.adhesive_gsm;
    }
    return board;
}

}  // namespace flutebook::geometry
