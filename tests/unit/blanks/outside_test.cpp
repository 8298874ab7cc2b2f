// Outside dimensions less what the walls take, reckoned by hand: layers of board at each end of a side, 3 mm each.
#include <catch2/catch.hpp>

#include "host/base/errors.hpp"
#include "host/blanks/blank.hpp"
#include "tests/support/small_plant.hpp"

using namespace flutebook;
using orders::InsideSize;

namespace {

constexpr double caliper_mm = 3;  // on flute B, whose panels are lengthened by as much

orders::Request outside_request(plant::Plant& plant, const std::string& style, const InsideSize& outside) {
    orders::Request request = fixture::box_request(plant);
    plant.boards[request.board].caliper_mm = caliper_mm;
    request.style = style;
    request.inside.reset();
    request.outside = outside;
    return request;
}

using Measures = std::vector<std::pair<std::string, double>>;

// What the walls take of L, B and H of a box of this inside.
void check_walls_of(const InsideSize& box, const std::string& style, const InsideSize& walls,
                    const Measures& measures = {}) {
    INFO(style);
    plant::Plant plant = fixture::small_plant();
    auto request = outside_request(
        plant, style,
        {box.length_mm + walls.length_mm, box.width_mm + walls.width_mm, box.height_mm + walls.height_mm});
    request.measures = measures;
    const InsideSize inside = blanks::inside_of(plant, request);
    CHECK(inside.length_mm == Approx(box.length_mm).epsilon(1e-9));
    CHECK(inside.width_mm == Approx(box.width_mm).epsilon(1e-9));
    CHECK(inside.height_mm == Approx(box.height_mm).epsilon(1e-9));
}

void check_walls(const std::string& style, const InsideSize& walls, const Measures& measures = {}) {
    check_walls_of({400, 300, 250}, style, walls, measures);
}

std::string refusal(const std::string& style, const InsideSize& outside) {
    plant::Plant plant = fixture::small_plant();
    const auto request = outside_request(plant, style, outside);
    try {
        static_cast<void>(blanks::inside_of(plant, request));
    } catch (const InputError& error) {
        CHECK(error.whose() == InputError::Whose::request);
        return error.lines().front();
    }
    return "";
}

}  // namespace

TEST_CASE("the walls of a slotted box take two layers of its sides and four of its flaps") {
    check_walls("0201", {6, 6, 12});
}

TEST_CASE("an open end takes no layer") {
    check_walls("0200", {6, 6, 6});
}

TEST_CASE("outer flaps that overlap wholly take a third layer at each end, and inner flaps that do a fourth") {
    // Each flap is 298.5 mm deep: two of them leave a gap in 653 mm and overlap in 403 mm.
    check_walls_of({650, 300, 250}, "0203", {6, 6, 18});
    check_walls("0203", {6, 6, 24});
}

TEST_CASE("a cross takes one layer at each side and at its base, and two at its top") {
    check_walls("0401", {6, 6, 9});
    check_walls("0404", {6, 6, 9});
}

TEST_CASE("a folder of panels takes two layers where its lid tucks in, and at its ends as many as lie there") {
    // Its outer end flaps reach over one another: 2 x 153 mm in a height of 253 mm.
    check_walls("0409", {18, 9, 6});
    check_walls("0409", {12, 9, 6}, {{"end", 120}});
}

TEST_CASE("a tray takes three layers at its ends, two at its front, and one each of back, base and lid") {
    check_walls("0421", {18, 9, 6});
    check_walls("0426", {18, 9, 6});
}

TEST_CASE("the tab of a joint takes no more than the panels were lengthened for beside their own thickness") {
    plant::Plant plant = fixture::small_plant();
    const auto request = outside_request(plant, "0201", {408, 308, 262});
    for (plant::Allowance& allowance : plant.allowances) allowance.panel_mm = 5;
    // Two panels of 3 mm, and 2 mm of the tab's 3.
    CHECK(blanks::inside_of(plant, request).length_mm == Approx(400).epsilon(1e-9));
    CHECK(blanks::inside_of(plant, request).width_mm == Approx(302).epsilon(1e-9));
}

TEST_CASE("a box given by its outside is drawn as the box that is left within its walls") {
    plant::Plant plant = fixture::small_plant();
    const auto outside = outside_request(plant, "0201", {406, 306, 262});
    auto inside = outside;
    inside.outside.reset();
    inside.inside = InsideSize{400, 300, 250};
    const blanks::Blank left = blanks::make_blank(plant, outside), asked = blanks::make_blank(plant, inside);
    CHECK(left.length_mm == asked.length_mm);
    CHECK(left.width_mm == asked.width_mm);
    CHECK(left.area_m2 == asked.area_m2);
}

TEST_CASE("walls that leave nothing of the outside are refused") {
    CHECK(refusal("0201", {406, 306, 11})
              .find("outside: cannot be turned into inside dimensions: found walls thicker "
                    "than the box; give `inside`") != std::string::npos);
}

TEST_CASE("an outside of a style of several pieces, or whose walls are not known, is refused") {
    CHECK(refusal("0300", {406, 306, 262}).find("found a style of several pieces; give `inside`") != std::string::npos);
    CHECK(refusal("0501", {406, 306, 262}).find("found a style whose walls are not known; give `inside`") !=
          std::string::npos);
}
