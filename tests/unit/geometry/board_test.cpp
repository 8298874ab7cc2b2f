// A board as it enters the sums. Facts of the trade are marked as such; the rest is arithmetic done by hand.
#include <catch2/catch.hpp>

#include "host/geometry/board.hpp"
#include "tests/support/small_plant.hpp"

using namespace flutebook;
using geometry::BoardMake;
using geometry::make_board;

namespace {

// A board of the small plant, as ordered on a day.
BoardMake board_of(const char* code, base::Date day = fixture::date(2026, 10, 15)) {
    static const plant::Plant plant = fixture::small_plant();
    orders::Request request = fixture::box_request(plant);
    request.board = fixture::board_index(plant, code);
    request.date = day;
    return make_board(plant, request);
}

double glue_lines_gsm(const BoardMake& board) {
    double sum = 0;
    for (const geometry::PlyMake& ply : board.plies) sum += ply.adhesive_gsm;
    return sum;
}

}  // namespace

TEST_CASE("combined board weighs its liners, its medium by take-up, and the dry adhesive of both glue lines") {
    // B-140: 140 + 127 x 1.32 + 125, and 4.5 + 5.5 of adhesive.
    REQUIRE(board_of("B-140").grammage_gsm == Approx(140 + 167.64 + 125 + 10).epsilon(1e-14));
}

TEST_CASE("double wall consumes two mediums and four glue lines") {
    // common practice, no published source
    const BoardMake board = board_of("BC-370");
    REQUIRE(board.media == 2);
    // B: 4.5 and 5.5, C: 5 and 6, each flute glued to a liner on both sides.
    REQUIRE(glue_lines_gsm(board) == Approx(21).epsilon(1e-14));
}

TEST_CASE("double wall weighs both mediums, each by the take-up of its own flute") {
    REQUIRE(board_of("BC-370").grammage_gsm == Approx(140 + 105 * 1.32 + 125 + 127 * 1.43 + 125 + 21).epsilon(1e-14));
}

TEST_CASE("a medium without a second liner carries the single-facer line alone") {
    REQUIRE(glue_lines_gsm(board_of("SF-B")) == 4.5);
}

TEST_CASE("adhesive lies on the medium, never on a liner") {
    for (const geometry::PlyMake& ply : board_of("BC-370").plies)
        REQUIRE((ply.adhesive_gsm > 0) == (ply.flute != nullptr));
}

TEST_CASE("a liner takes up as much paper as it covers") {
    REQUIRE(board_of("B-140").plies.front().take_up == 1);
}

TEST_CASE("plies stand outside first") {
    const plant::Plant plant = fixture::small_plant();
    const BoardMake board = board_of("B-140");
    REQUIRE(board.plies[0].paper == fixture::paper_index(plant, "KL140"));
    REQUIRE(board.plies[1].paper == fixture::paper_index(plant, "SC127"));
    REQUIRE(board.plies[2].paper == fixture::paper_index(plant, "TL125"));
}

TEST_CASE("a ply costs what its paper cost by the kilogram on the day before a price changes") {
    REQUIRE(board_of("B-140", fixture::date(2026, 8, 31)).plies[0].price_per_kg == Approx(0.640).epsilon(1e-14));
}

TEST_CASE("a ply costs the new price from the very day it changes") {
    REQUIRE(board_of("B-140", fixture::date(2026, 9, 1)).plies[0].price_per_kg == Approx(0.664).epsilon(1e-14));
}

TEST_CASE("a board is as thick as its flutes are high, and its liners at 700 g/m2 a millimetre") {
    // from memory
    REQUIRE(board_of("B-140").caliper_mm == Approx(2.5 + (140 + 125) / 700.0).epsilon(1e-14));
    REQUIRE(board_of("BC-370").caliper_mm == Approx(2.5 + 3.6 + (140 + 125 + 125) / 700.0).epsilon(1e-14));
    REQUIRE(board_of("SF-B").caliper_mm == Approx(2.5 + 125 / 700.0).epsilon(1e-14));
}

TEST_CASE("the caliper that a board gives counts instead") {
    plant::Plant plant = fixture::small_plant();
    plant.boards[fixture::board_index(plant, "BC-370")].caliper_mm = 6.4;
    orders::Request request = fixture::box_request(plant);
    request.board = fixture::board_index(plant, "BC-370");
    REQUIRE(make_board(plant, request).caliper_mm == 6.4);
}

TEST_CASE("the moisture of a ply is its paper's") {
    REQUIRE(board_of("B-140").plies[1].moisture == 0.085);
}
