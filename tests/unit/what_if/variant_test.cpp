// What is told of a request with other numbers.
#include "host/what_if/variant.hpp"

#include <catch2/catch.hpp>

using namespace flutebook;

TEST_CASE("a warning that stood before a change is not told again, wherever it stands now") {
    const std::vector<base::Warning> was = {{"plant.yaml:3:1", "old"}};
    const std::vector<base::Warning> now = {{"plant.yaml:4:1", "old"}, {"plant.yaml:5:1", "new"}};
    std::vector<base::Warning> told;
    what_if::add_new_warnings(told, now, was);
    REQUIRE(told.size() == 1);
    CHECK(told[0].text == "new");
}
