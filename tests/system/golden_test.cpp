// One answer with its whole cost sheets, compared to the byte with the one that was approved.
#include <catch2/catch.hpp>

#include "tests/system/face.hpp"
#include "tests/system/golden.hpp"

using namespace flutebook::fixture;

TEST_CASE("the cost sheet of an order printed, cut, folded and glued is the one that was approved") {
    const std::string approved = approved_answer("R-1007.txt");
    const Ended ended = quote_demo({demo_request("R-1007")}, {"--sheet"});
    CHECK(ended.exit_code == 0);
    CHECK(approved.size() > 5000);
    CHECK(difference(approved, ended.output) == "");
}

TEST_CASE("the cost sheet of boxes on a board that is bought as sheets is the one that was approved") {
    const std::string approved = approved_answer("R-1014.txt");
    const Ended ended = quote_demo({demo_request("R-1014")}, {"--sheet"});
    CHECK(ended.exit_code == 0);
    CHECK(approved.size() > 5000);
    CHECK(difference(approved, ended.output) == "");
}
