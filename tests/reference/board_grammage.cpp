// The combined grammage of two boards, through the sums that quotes use.
//
// Take-up: B 1.329 and C 1.442, one Québec box plant, 2008 (metres of medium by metres of liner): ecoinvent 3.10,
// "corrugated board box production", dataset 11632, general comment (uuid 7f549a3a-d4e0-4bdf-a3a4-657c3762e4c0). Seen.
// The liners, mediums and glue lines are chosen here and the sums computed.
// That grammage is liners, mediums by take-up and dry adhesive: the AICC's column "Ask Ralph", 6 March 2018, prints it
// without adhesive (seen); with adhesive it is from memory.
#include <catch2/catch.hpp>

#include "host/geometry/board.hpp"
#include "tests/support/small_plant.hpp"

using namespace flutebook;
using geometry::BoardMake;

namespace {

constexpr double take_up_b = 1.329;
constexpr double take_up_c = 1.442;
constexpr double glue_line_gsm = 5;

// A plant whose papers weigh as told, outside first, mediums on their flutes, with one board of them all.
struct Ply {
    double grammage_gsm;
    const char* flute;  // null for a liner
};

BoardMake board_of(const std::vector<Ply>& plies) {
    plant::Plant plant = fixture::small_plant();
    const plant::Paper pattern = plant.papers.front();
    for (plant::Flute& flute : plant.flutes) {
        flute.take_up = flute.code == "B" ? take_up_b : take_up_c;
        flute.single_facer_gsm = flute.double_backer_gsm = glue_line_gsm;
    }
    plant.papers.clear();
    plant.boards.resize(1);
    plant.boards.front().plies.clear();
    for (const Ply& ply : plies) {
        plant.papers.push_back(pattern);
        plant.papers.back().grammage_gsm = ply.grammage_gsm;
        plant::Board::Ply asked = {plant.papers.size() - 1, std::nullopt, false};
        for (std::size_t i = 0; i < plant.flutes.size() && ply.flute; ++i)
            if (plant.flutes[i].code == ply.flute) asked = {plant.papers.size() - 1, i, true};
        plant.boards.front().plies.push_back(asked);
    }
    orders::Request request{};
    request.board = 0;
    request.date = fixture::date(2026, 10, 15);
    return geometry::make_board(plant, request);
}

// Liners 150, 120 and 150, mediums 110 on B and 120 on C.
BoardMake double_wall() {
    return board_of({{150, nullptr}, {110, "B"}, {120, nullptr}, {120, "C"}, {150, nullptr}});
}

}  // namespace

TEST_CASE("single wall of 200 + 140 C + 200 with two glue lines of 5 g weighs 611.88 g/m2") {
    const BoardMake board = board_of({{200, nullptr}, {140, "C"}, {200, nullptr}});
    REQUIRE(board.grammage_gsm == Approx(200 + 201.88 + 200 + 10).epsilon(1e-12));
    REQUIRE(board.grammage_gsm == Approx(611.88).epsilon(1e-12));
}

TEST_CASE("double wall of 150 + 110 B + 120 + 120 C + 150 with four glue lines of 5 g weighs 759.23 g/m2") {
    REQUIRE(double_wall().grammage_gsm == Approx(420 + 146.19 + 173.04 + 20).epsilon(1e-12));
    REQUIRE(double_wall().grammage_gsm == Approx(759.23).epsilon(1e-12));
}

TEST_CASE("double wall is two mediums glued by four lines") {
    // common practice, no published source
    double adhesive_gsm = 0;
    for (const geometry::PlyMake& ply : double_wall().plies) adhesive_gsm += ply.adhesive_gsm;
    REQUIRE(double_wall().media == 2);
    REQUIRE(adhesive_gsm == 4 * glue_line_gsm);
}
