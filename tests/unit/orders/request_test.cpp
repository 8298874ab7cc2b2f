// A fit request of each style.
#include <catch2/catch.hpp>

#include "host/base/errors.hpp"
#include "tests/unit/plant/plant_folder.hpp"

using namespace flutebook;
using namespace flutebook::base;
using namespace flutebook::orders;
using namespace flutebook::fields;
using namespace flutebook::plant;
using fixture::PlantFolder;

namespace {

constexpr const char* slotted_box = "style: \"0201\"\ninside: {length: 400, width: 300, height: 250}";

}  // namespace

TEST_CASE("a request for a slotted box is read whole") {
    const PlantFolder folder;
    const auto request = folder.read_request();
    REQUIRE(request.number == "R-1001");
    REQUIRE(request.customer == "Ashlar Tiles");
    REQUIRE(to_string(request.date) == "2026-10-15");
    REQUIRE(request.style == "0201");
    REQUIRE(request.inside->length_mm == 400);
    REQUIRE(request.inside->width_mm == 300);
    REQUIRE(request.inside->height_mm == 250);
    REQUIRE_FALSE(request.outline.has_value());
    REQUIRE(request.board == 0);
    REQUIRE(request.quantities == std::vector<double>{500, 1000, 5000});
    REQUIRE(request.margin == 0.18);
    REQUIRE(request.colours == 2);
    REQUIRE(request.route == std::vector<std::size_t>{0});
    REQUIRE(std::get<GivenText>(request.find_extras("scrap")->find("note")->value).text == "2");
    REQUIRE(request.place.file == folder.path("r.yaml"));
    REQUIRE(base::place_text(request.places, "inside.height", {}) == folder.path("r.yaml") + ":5:43");
    REQUIRE(base::place_text(request.places, "quantities", {}).find(":7:") != std::string::npos);
}

TEST_CASE("what a request may leave out has its meaning") {
    const PlantFolder folder;
    folder.write("r.yaml",
                 "request: R-2\ndate: 2026-10-15\nstyle: 0201\n"
                 "inside: {length: 400, width: 300, height: 250}\nboard: B-140\nquantities: [1]\nmargin: 0\n");
    const auto request = folder.read_request();
    REQUIRE(request.customer.empty());
    REQUIRE(request.colours == 0);
    REQUIRE_FALSE(request.route.has_value());
    REQUIRE(request.extras.empty());
    REQUIRE(request.style == "0201");
}

TEST_CASE("a sheet has two dimensions and may name an empty route") {
    const PlantFolder folder;
    folder.change("r.yaml", slotted_box, "style: \"0110\"\ninside: {length: 1200, width: 800}");
    folder.change("r.yaml", "route: [FG1]", "route: []");
    const auto request = folder.read_request();
    REQUIRE(request.inside->length_mm == 1200);
    REQUIRE(request.inside->width_mm == 800);
    REQUIRE(request.inside->height_mm == 0);
    REQUIRE(request.route.has_value());
    REQUIRE(request.route->empty());
}

TEST_CASE("a sheet may be printed on its way") {
    const PlantFolder folder;
    folder.change("r.yaml", slotted_box, "style: \"0110\"\ninside: {length: 1200, width: 800, height: 0}");
    REQUIRE(folder.request_complaints().empty());
}

TEST_CASE("an outline gives the blank and the board that is the box") {
    const PlantFolder folder;
    folder.change("r.yaml", slotted_box, "style: outline\noutline: {length: 600, width: 40 cm, area: 0.21}");
    folder.change("r.yaml", "route: [FG1]", "route: [DC1, FG1]");
    const auto request = folder.read_request();
    REQUIRE_FALSE(request.inside.has_value());
    REQUIRE(request.outline->length_mm == 600);
    REQUIRE(request.outline->width_mm == 400);
    REQUIRE(request.outline->area_m2 == 0.21);
    REQUIRE(request.route == std::vector<std::size_t>{1, 0});
}

TEST_CASE("an outline may be its whole blank") {
    const PlantFolder folder;
    folder.change("r.yaml", slotted_box, "style: outline\noutline: {length: 600, width: 400, area: 0.24}");
    folder.change("r.yaml", "route: [FG1]\n", "");
    REQUIRE(folder.request_complaints().empty());
}

TEST_CASE("another date may be asked for in place of the file's") {
    const PlantFolder folder;
    const auto plant = folder.read();
    const auto request = read_request(plant, folder.path("r.yaml"), parse_date("2026-02-01"));
    REQUIRE(to_string(request.date) == "2026-02-01");
    REQUIRE_THROWS_AS(read_request(plant, folder.path("r.yaml"), parse_date("2025-02-01")), InputError);
}

TEST_CASE("a double-wall board with its flutes the other way round takes the same allowances") {
    const PlantFolder folder;
    folder.change("boards.yaml", "{flute: B, paper: SC127}, TL125, {flute: C, paper: SC127}, KL135]",
                  "{flute: C, paper: SC127}, TL125, {flute: B, paper: SC127}, KL135]");
    folder.change("r.yaml", "board: B-140", "board: BC-200");
    REQUIRE(folder.read().find_board("BC-200")->flutes == "C+B");
    REQUIRE(folder.request_complaints().empty());
}

TEST_CASE("a request keeps the text that it was read from, whatever becomes of its file") {
    const PlantFolder folder;
    const auto plant = folder.read();
    const auto request = read_request(plant, folder.path("r.yaml"));
    folder.change("r.yaml", "quantities: [500", "quantities: [600");
    REQUIRE(read_request(plant, request.place.file, request.text, std::nullopt).quantities == request.quantities);
}
