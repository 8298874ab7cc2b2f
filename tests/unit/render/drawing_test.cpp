// A small drawing with every kind of mark through the SVG renderer.
#include <boost/property_tree/ptree.hpp>
#include <boost/property_tree/xml_parser.hpp>
#include <catch2/catch.hpp>
#include <functional>
#include <set>
#include <sstream>

#include "host/render/drawing_layout.hpp"
#include "host/render/html_report.hpp"
#include "host/render/svg.hpp"
#include "host/render/svg_style.hpp"
#include "host/render/text_exports.hpp"
#include "host/render/text_report.hpp"

using namespace flutebook::render;
using Catch::Matchers::Contains;

namespace {

using boost::property_tree::ptree;

Drawing drawing_with(const std::string& hostile) {
    Drawing drawing{hostile, hostile};
    drawing.polygons = {{DrawnPolygon::Kind::board,
                         {{0, 0}, {400, 0}, {400, 200}, {0, 200}},
                         hostile,
                         "",
                         {{{50, 50}, {90, 50}, {90, 90}}}},
                        {DrawnPolygon::Kind::lost, {{0, 200}, {400, 200}, {400, 220}, {0, 220}}, hostile, "side-trim"},
                        {DrawnPolygon::Kind::lost, {{0, -20}, {400, -20}, {400, 0}, {0, 0}}, hostile, hostile},
                        {DrawnPolygon::Kind::joined, {{-30, 0}, {0, 0}, {0, 200}, {-30, 200}}, hostile, "", {}, 0.25}};
    drawing.lines = {{DrawnLine::Kind::crease, {100, 0}, {100, 200}, hostile},
                     {DrawnLine::Kind::cut, {200, 0}, {200, 100}, hostile},
                     {DrawnLine::Kind::slot, {300, 0}, {300, 100}, hostile}};
    drawing.texts = {{{150, 150}, hostile, 1e9}};
    drawing.dimensions = {{DrawnDimension::Side::below, 0, -30, 0, "30", hostile},
                          {DrawnDimension::Side::below, 1, -30, 400, "430", hostile},
                          {DrawnDimension::Side::left, 0, -20, 220, "240", hostile}};
    drawing.arrows = {{DrawnArrow::Direction::up_and_down, hostile},
                      {DrawnArrow::Direction::to_the_right, hostile},
                      {DrawnArrow::Direction::left_and_right, hostile}};
    return drawing;
}

ptree parsed(const std::string& xml) {
    std::istringstream stream(xml);
    ptree result;
    boost::property_tree::read_xml(stream, result);
    return result;
}

void walk(const ptree& tree, const std::function<void(const std::string&, const ptree&)>& visit) {
    for (const auto& [name, child] : tree) {
        visit(name, child);
        walk(child, visit);
    }
}

}  // namespace

TEST_CASE("a drawing is well-formed XML whatever its texts hold, in a page and as a file") {
    for (const std::string hostile : {"<b>&\"'</title>]]>", "\x01\xff", "Tray", ""}) {
        INFO(hostile);
        const Drawing drawing = drawing_with(hostile);
        CHECK_NOTHROW(parsed(svg_in_page(drawing, "r0-")));
        CHECK_NOTHROW(parsed(svg_file({{drawing, drawing}})));
    }
}

TEST_CASE("every mark of a drawing has its name as a title") {
    std::multiset<std::string> titles;
    walk(parsed(svg_in_page(drawing_with("named"), "")), [&](const std::string& tag, const ptree& tree) {
        if (tag == "title") titles.insert(tree.data());
    });
    const Drawing drawing = drawing_with("named");
    const std::size_t marks =
        drawing.polygons.size() + drawing.lines.size() + drawing.dimensions.size() + drawing.arrows.size();
    CHECK(titles.count("named") == marks + 1);  // and the drawing's own
}

TEST_CASE("every corner of a drawing's polygons lies inside its picture") {
    for (const double wide : {1.0, 40.0, 400.0, 9000.0}) {
        Drawing drawing = drawing_with("x");
        for (DrawnPolygon& polygon : drawing.polygons)
            for (DrawnPoint& point : polygon.outline) point.x_mm *= wide / 400;
        const DrawingLayout layout(drawing);
        for (const DrawnPolygon& polygon : drawing.polygons)
            for (const DrawnPoint& corner : polygon.outline) {
                const PagePoint point = layout.at(corner);
                CHECK(point.x >= 0);
                CHECK(point.y >= 0);
                CHECK(point.x <= layout.width());
                CHECK(point.y <= layout.height());
            }
        for (const DrawnDimension& dimension : drawing.dimensions) {
            const double line = layout.lane_line(dimension.side, dimension.lane);
            CHECK(line > 0);
            CHECK(line < (dimension.side == DrawnDimension::Side::left ? layout.width() : layout.height()));
        }
    }
}

TEST_CASE("a drawing keeps to the width of a narrow screen") {
    CHECK(DrawingLayout(drawing_with("x")).width() <= picture_width);
    Drawing tall = drawing_with("x");
    for (DrawnPolygon& polygon : tall.polygons)
        for (DrawnPoint& point : polygon.outline) point.y_mm *= 30;
    CHECK(DrawingLayout(tall).height() < 420);
    Drawing half = drawing_with("x");
    half.width = Drawing::Width::half;
    CHECK(2 * DrawingLayout(half).width() < picture_width);
}

TEST_CASE("the label of a length that is too short for it stands across, or is left to its title") {
    Drawing drawing = drawing_with("x");
    const auto below = DrawnDimension::Side::below;
    drawing.dimensions = {{below, 0, 0, 400, "400", "a"}, {below, 1, 0, 5, "5.25", "b"}, {below, 1, 5, 10, "5.5", "c"}};
    const DrawingLayout layout(drawing);
    CHECK(layout.label(0) == LabelPlace::along);
    CHECK(layout.label(1) == LabelPlace::across);
    CHECK(layout.label(2) == LabelPlace::none);
    CHECK_THAT(svg_in_page(drawing, ""), Contains("<title>c</title>") && !Contains(">5.5</text>"));
}

TEST_CASE("the same drawing gives the same bytes, and no two drawings of a page share an id") {
    const Drawing drawing = drawing_with("x");
    CHECK(svg_file({{drawing}}) == svg_file({{drawing}}));
    const Report report{
        "quote", "R-1", {}, {{"Layout", {Drawings{{drawing, drawing}}}}, {"More", {Drawings{{drawing}}}}}};
    const std::string page = to_html({report, report});
    std::multiset<std::string> ids;
    for (auto at = page.find(" id=\""); at != std::string::npos; at = page.find(" id=\"", at + 1))
        ids.insert(page.substr(at, page.find('"', at + 5) - at));
    CHECK(ids.size() == 12);
    for (const std::string& id : ids) CHECK(ids.count(id) == 1);
}

TEST_CASE("each cause of loss has its own hatch, and one that is not known the plain one") {
    std::set<std::string> hatches;
    for (const char* cause :
         {"side-trim", "roll-ends", "corrugator-run", "order-change", "setup", "rejects", "cut-out"})
        hatches.insert(hatch_pattern(cause, "h"));
    CHECK(hatches.size() == 7);
    CHECK(hatch_pattern("flood", "h") == hatch_pattern("surplus", "h"));
    CHECK_THAT(svg_in_page(drawing_with("x"), "p-"), Contains("fill=\"url(#p-h0)\"") && Contains("id=\"p-h0\""));
}

TEST_CASE("a drawing as a file brings its colours for light and dark, and a page has them once") {
    const Drawing drawing = drawing_with("x");
    CHECK_THAT(svg_file({{drawing}}), Contains("prefers-color-scheme: dark") && Contains("--kraft:"));
    CHECK_THAT(svg_in_page(drawing, ""), !Contains("<style"));
    const Report report{"quote", "R-1", {}, {{"Layout", {Drawings{{drawing, drawing}}}}}};
    const std::string page = to_html({report});
    CHECK(page.find(".drawing .board") == page.rfind(".drawing .board"));
    CHECK_THAT(page, Contains("<figcaption>"));
}

TEST_CASE("text and Markdown leave a drawing out") {
    const Report without{"quote", "R-1", {}, {{"Layout", {Note{"a sentence"}}}}};
    Report with = without;
    with.sections[0].blocks.emplace_back(Drawings{{drawing_with("picture")}});
    CHECK(to_text(with) == to_text(without));
    CHECK(to_markdown(with) == to_markdown(without));
}
