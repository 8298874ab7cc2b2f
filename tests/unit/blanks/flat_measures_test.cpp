// Measures of blanks that are laid out by hand.
#include "host/blanks/flat_measures.hpp"

#include <catch2/catch.hpp>

using namespace flutebook::blanks;

namespace {

FlatCell cell_at(Point least, Point most) {
    FlatCell cell{};
    cell.outline = {least, {most.x, least.y}, most, {least.x, most.y}};
    return cell;
}

// Two cells of 100 x 50 beside one another.
FlatBlank pair() {
    FlatBlank blank{};
    blank.length_mm = 200;
    blank.width_mm = 50;
    blank.cells = {cell_at({0, 0}, {100, 50}), cell_at({100, 0}, {200, 50})};
    return blank;
}

}  // namespace

TEST_CASE("a cut between two cells counts once, and a crease is no cut") {
    FlatBlank blank = pair();
    CHECK(measure(blank).cut_mm == Approx(500 + 50));
    CHECK(measure(blank).crease_mm == 0);
    blank.creases = {{{100, 0}, {100, 50}}};
    CHECK(measure(blank).cut_mm == Approx(500));
    CHECK(measure(blank).crease_mm == Approx(50));
}

TEST_CASE("a hole is cut out of the area and round its border") {
    FlatBlank blank = pair();
    blank.cells[0].holes = {{{10, 10}, {30, 10}, {30, 20}, {10, 20}}};
    CHECK(measure(blank).area_mm2 == 9800);
    CHECK(measure(blank).cut_mm == Approx(550 + 60));
}

TEST_CASE("what is joined or plain is not printed, and the joint is as long as its crease") {
    FlatBlank blank = pair();
    blank.cells[1].parent = 0;
    blank.cells[1].hinge = {{100, 0}, {100, 50}};
    CHECK(measure(blank).joint_mm == 0);
    CHECK(measure(blank).print_area_mm2 == 10000);
    blank.cells[1].is_joined = true;
    CHECK(measure(blank).joint_mm == 50);
    CHECK(measure(blank).print_area_mm2 == 5000);
    blank.cells[0].is_plain = true;
    CHECK(measure(blank).print_area_mm2 == 0);
}

TEST_CASE("the places of scores are distinct and rise") {
    FlatBlank blank = pair();
    blank.creases = {{{100, 0}, {100, 50}}, {{40, 0}, {40, 20}}, {{100.001, 50}, {100.001, 70}}, {{0, 30}, {40, 30}}};
    CHECK(measure(blank).scores.along_mm == std::vector<double>{40, 100});
    CHECK(measure(blank).scores.across_mm == std::vector<double>{30});
}
