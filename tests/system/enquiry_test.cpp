// An enquiry typed in a line, through the program.
#include <catch2/catch.hpp>
#include <string>
#include <vector>

#include "tests/system/face.hpp"

using namespace flutebook::fixture;
using Catch::Matchers::StartsWith;

TEST_CASE("an enquiry is answered below what was understood of it") {
    const PlantCopy plant;
    const Ended ended = ask_at(plant.folder(), {"quote", "0201 400x300x250 B-140 500 2c 18% 2026-10-15"});
    CHECK(ended.exit_code == 0);
    CHECK_THAT(ended.output, StartsWith("Understood: style 0201, inside 400 x 300 x 250 mm, board B-140, quantity 500, "
                                        "colours 2, margin 0.18, date 2026-10-15, request E-"));
}

TEST_CASE("what is wrong with an extra of an enquiry stands at its column of the line") {
    const PlantCopy plant;
    const Ended ended = ask_at(plant.folder(), {"quote", "0201 400x300x250 B-140 500 18% delivery.distance=-3"});
    CHECK(ended.exit_code == 1);
    CHECK_THAT(ended.errors, StartsWith("enquiry:1:32: extras.delivery.distance: out of range: found -3"));
}
