// A tray of five cells, laid out by hand, as a drawing.
#include "host/drawings/flat_drawing.hpp"

#include <catch2/catch.hpp>
#include <cmath>

#include "host/render/svg.hpp"

using namespace flutebook;
using namespace flutebook::drawings;
using blanks::FlatBlank;
using blanks::FlatCell;
using blanks::Point;
using blanks::Segment;
using render::Drawing;
using render::DrawnDimension;
using render::DrawnLine;
using render::DrawnPolygon;

namespace {

FlatCell rectangle(const char* name, Point least, Point most) {
    FlatCell cell{};
    cell.name = name;
    cell.outline = {least, {most.x, least.y}, most, {least.x, most.y}};
    return cell;
}

// A base of 300 x 200, walls of 50; the far wall is joined to nothing but told so, and has a handle's hole.
FlatBlank tray() {
    FlatBlank blank{};
    blank.length_mm = 400;
    blank.width_mm = 300;
    blank.caliper_mm = 3;
    blank.cells = {rectangle("base", {50, 50}, {350, 250}), rectangle("left", {0, 50}, {50, 250}),
                   rectangle("right", {350, 50}, {400, 250}), rectangle("back", {50, 0}, {350, 50}),
                   rectangle("front", {50, 250}, {350, 300})};
    for (std::size_t i = 1; i < blank.cells.size(); ++i) {
        blank.cells[i].parent = 0;
        blank.cells[i].angle_deg = 90;
    }
    blank.cells[3].is_joined = true;
    blank.cells[4].holes = {{{150, 265}, {250, 265}, {250, 285}, {150, 285}}};
    blank.creases = {{{50, 250}, {50, 50}}, {{350, 50}, {350, 250}}, {{50, 50}, {350, 50}}, {{50, 250}, {350, 250}}};
    return blank;
}

ShownUnits metric() {
    return ShownUnits(plant::Plant{});
}

double length_of(const Drawing& drawing, DrawnLine::Kind kind) {
    double result = 0;
    for (const DrawnLine& line : drawing.lines)
        if (line.kind == kind) result += std::hypot(line.to.x_mm - line.from.x_mm, line.to.y_mm - line.from.y_mm);
    return result;
}

std::vector<std::string> labels(const Drawing& drawing, DrawnDimension::Side side, std::size_t lane) {
    std::vector<std::string> result;
    for (const DrawnDimension& dimension : drawing.dimensions)
        if (dimension.side == side && dimension.lane == lane) result.push_back(dimension.text);
    return result;
}

}  // namespace

TEST_CASE("a blank's borders are drawn as cuts except where a crease lies on them") {
    const Drawing drawing = flat_drawing(metric(), tray());
    CHECK(length_of(drawing, DrawnLine::Kind::crease) == Approx(1000));
    // Five cells' borders less twice the creases, and the hole.
    CHECK(length_of(drawing, DrawnLine::Kind::cut) == Approx(1000 + 2 * 500 + 2 * 700 - 2 * 1000 + 240));
}

TEST_CASE("a crease on a part of an edge leaves the rest of it a cut") {
    FlatBlank blank = tray();
    blank.creases = {{{100, 50}, {200, 50}}, {{150, 50}, {250, 50}}};
    double length = 0;
    for (const DrawnLine& line : flat_drawing(metric(), blank).lines)
        if (line.kind == DrawnLine::Kind::cut && line.from.y_mm == 50 && line.to.y_mm == 50)
            length += std::abs(line.to.x_mm - line.from.x_mm);
    CHECK(length == Approx(2 * (300 - 150) + 2 * 50));  // base and back; the ends of left and right
}

TEST_CASE("a blank is measured from crease to crease and over all") {
    const Drawing drawing = flat_drawing(metric(), tray());
    using Texts = std::vector<std::string>;
    CHECK(labels(drawing, DrawnDimension::Side::below, 0) == Texts{"50", "300", "50"});
    CHECK(labels(drawing, DrawnDimension::Side::below, 1) == Texts{"400"});
    CHECK(labels(drawing, DrawnDimension::Side::left, 0) == Texts{"50", "200", "50"});
    CHECK(labels(drawing, DrawnDimension::Side::left, 1) == Texts{"300"});
    FlatBlank sheet = tray();
    sheet.cells = {rectangle("sheet", {0, 0}, {400, 300})};
    sheet.creases.clear();
    CHECK(labels(flat_drawing(metric(), sheet), DrawnDimension::Side::below, 0) == Texts{"400"});
}

TEST_CASE("the labels of a blank's parts come to the label of the whole") {
    FlatBlank blank = tray();
    blank.length_mm = 100;
    blank.creases = {{{33.3333, 0}, {33.3333, 50}}, {{66.6666, 0}, {66.6666, 50}}};
    using Texts = std::vector<std::string>;
    const Drawing drawing = flat_drawing(metric(), blank);
    CHECK(labels(drawing, DrawnDimension::Side::below, 0) == Texts{"33.3", "33.3", "33.4"});
    CHECK(labels(drawing, DrawnDimension::Side::below, 1) == Texts{"100"});
    CHECK(drawing.dimensions[0].name == "33.333 mm");
}

TEST_CASE("a us plant's labels are sixteenths that come to that of the whole, and names are not rounded") {
    FlatBlank blank = tray();
    blank.length_mm = 100;
    blank.creases = {{{33.3333, 0}, {33.3333, 50}}, {{66.6666, 0}, {66.6666, 50}}};
    plant::Plant plant{};
    plant.units = plant::Units::us;
    using Texts = std::vector<std::string>;
    const Drawing drawing = flat_drawing(ShownUnits(plant), blank);
    CHECK(labels(drawing, DrawnDimension::Side::below, 0) == Texts{"1 5/16", "1 5/16", "1 5/16"});
    CHECK(labels(drawing, DrawnDimension::Side::below, 1) == Texts{"3 15/16"});
    CHECK(drawing.dimensions[0].name == "1.312 in");
    CHECK(drawing.note.starts_with("in in;"));
}

TEST_CASE("what is cut out of a blank is hatched below its cells, and a joined cell has its own kind") {
    const Drawing drawing = flat_drawing(metric(), tray());
    REQUIRE(drawing.polygons.size() == 6);
    CHECK(drawing.polygons[0].kind == DrawnPolygon::Kind::lost);
    CHECK(drawing.polygons[0].cause == "cut-out");
    CHECK(drawing.polygons[4].kind == DrawnPolygon::Kind::joined);
    CHECK(drawing.polygons[5].holes.size() == 1);
    CHECK(drawing.polygons[5].name == "front: 300 x 50 mm, folded by 90°");
}

TEST_CASE("the drawing of a blank says which way the flutes run") {
    CHECK_THAT(render::svg_in_page(flat_drawing(metric(), tray()), ""),
               Catch::Matchers::Contains("<title>flutes</title>"));
}
