// Which step of an order a machine stands for.
#include <catch2/catch.hpp>

#include "tests/unit/review/documents_bench.hpp"

using namespace flutebook;
using namespace flutebook::fixture;

TEST_CASE("a machine stands for the step that names it, else for the first of its kind") {
    auto order = long_order("1");
    CHECK(order.step_of("PR1") == 1U);
    CHECK(order.step_of("DC1") == 2U);
    CHECK(order.step_of("FG1") == 3U);
    CHECK(order.step_of("FG2") == 3U);  // not on the route, but a folder-gluer as FG1 is
    CHECK_FALSE(order.step_of("XX9"));

    order.route = {"FG1", "DC1", "FG2"};
    CHECK(order.step_of("FG2") == 3U);
    order.converters.push_back({"FG3", catalogue::Converter::Kind::folder_gluer, 0, 0});
    CHECK(order.step_of("FG3") == 1U);
    CHECK_FALSE(order.step_of("PR1"));
    CHECK_FALSE(sheet_order("2").step_of("FG1"));
}

TEST_CASE("an order knows what each machine is allowed, and nothing of others") {
    const auto order = box_order("1");
    REQUIRE(order.find_corrugator("C2") != nullptr);
    CHECK(order.find_corrugator("C2")->run_waste == 0.04);
    CHECK(order.find_corrugator("FG1") == nullptr);
    REQUIRE(order.find_converter("FG2") != nullptr);
    CHECK(order.find_converter("FG2")->setup_sheets == 20);
    CHECK(order.find_converter("C1") == nullptr);
}
