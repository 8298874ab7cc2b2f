// Blanks from styles as data: held against an independent polygon library for every style of the library, and against
// the formulas of a slotted box to the bit.
#include <algorithm>
#include <boost/geometry.hpp>
#include <boost/geometry/geometries/point_xy.hpp>
#include <boost/geometry/geometries/polygon.hpp>
#include <cmath>
#include <random>

#include <catch2/catch.hpp>

#include "host/base/errors.hpp"
#include "host/blanks/blank.hpp"
#include "host/blanks/flat_measures.hpp"
#include "tests/support/small_plant.hpp"

using namespace flutebook;
using namespace flutebook::blanks;

namespace {

using BoostPoint = boost::geometry::model::d2::point_xy<double>;
using BoostPolygon = boost::geometry::model::polygon<BoostPoint>;
using BoostPolygons = boost::geometry::model::multi_polygon<BoostPolygon>;

template <typename Ring>
void add_ring(Ring& ring, const Polygon& polygon) {
    for (const Point& point : polygon) ring.emplace_back(point.x, point.y);
    ring.emplace_back(polygon.front().x, polygon.front().y);
}

BoostPolygon boost_polygon(const FlatCell& cell) {
    BoostPolygon polygon;
    add_ring(polygon.outer(), cell.outline);
    polygon.inners().resize(cell.holes.size());
    for (std::size_t i = 0; i < cell.holes.size(); ++i) add_ring(polygon.inners()[i], cell.holes[i]);
    boost::geometry::correct(polygon);
    return polygon;
}

// All cells as one, and the borders of each.
struct Union {
    double area_mm2, border_mm, cell_borders_mm;
};

Union united(const FlatBlank& blank) {
    BoostPolygons whole;
    double borders = 0;
    for (const FlatCell& cell : blank.cells) {
        const BoostPolygon polygon = boost_polygon(cell);
        borders += static_cast<double>(boost::geometry::perimeter(polygon));
        BoostPolygons more;
        boost::geometry::union_(whole, polygon, more);
        whole = std::move(more);
    }
    return {static_cast<double>(boost::geometry::area(whole)), static_cast<double>(boost::geometry::perimeter(whole)),
            borders};
}

const plant::Allowance& allowance() {
    static const plant::Plant plant = fixture::small_plant();
    return *plant.find_allowance("B", "0201");
}

StyleSize size_of(double length, double width, double height) {
    StyleSize size{};
    size.inside_mm = {length, width, height};
    size.caliper_mm = 3.1;
    size.allowance = &allowance();
    return size;
}

std::vector<FlatBlank> drawn(const std::string& code, const StyleSize& size) {
    const box_styles::StyleList styles;
    return draw_flat(*styles.find(code), size);
}

}  // namespace

TEST_CASE("area and cut of every style of the library are those of the union of its cells") {
    std::mt19937 random(20261128);
    std::uniform_real_distribution<double> side(90, 800);
    for (const box_styles::Style& style : box_styles::StyleList()) {
        INFO(style.code);
        int drawn_boxes = 0;
        for (int i = 0; i < 100; ++i) {
            const double a = side(random), b = side(random);
            try {
                for (const FlatBlank& blank : draw_flat(style, size_of(std::max(a, b), std::min(a, b), side(random)))) {
                    const FlatMeasures figures = measure(blank);
                    const Union whole = united(blank);
                    CHECK(figures.area_mm2 == Approx(whole.area_mm2).epsilon(1e-6));
                    // A crease is in two borders and no cut, a cut between two cells in two and cut once.
                    CHECK(figures.cut_mm ==
                          Approx((whole.cell_borders_mm + whole.border_mm) / 2 - figures.crease_mm).epsilon(1e-6));
                    CHECK(figures.area_mm2 <= blank.length_mm * blank.width_mm * (1 + 1e-12));
                }
                ++drawn_boxes;
            } catch (const InputError&) {
                // A style may refuse a size; most sizes it must take.
            }
        }
        if (!style.is_outline) CHECK(drawn_boxes >= 50);
    }
}

TEST_CASE("a slotted box of whole and half millimetres has the blank of its formula to the bit") {
    plant::Plant plant = fixture::small_plant();
    orders::Request request = fixture::box_request(plant);
    const plant::Allowance& a = *plant.find_allowance(plant.boards[request.board].flutes, request.style);
    std::mt19937 random(7);
    std::uniform_int_distribution<int> half(200, 2400);
    for (int i = 0; i < 500; ++i) {
        const orders::InsideSize box{half(random) / 2.0, half(random) / 2.0, half(random) / 2.0};
        request.inside = box;
        const Blank blank = make_blank(plant, request);
        const double body = box.height_mm + a.depth_mm, flap = box.width_mm / 2 + a.flap_mm;
        const double length =
            a.tab_mm + 2 * (box.length_mm + a.panel_mm) + 2 * (box.width_mm + a.panel_mm) - a.joint_mm;
        CHECK(blank.length_mm == length);
        CHECK(blank.width_mm == body + 2 * flap);
        CHECK(blank.joint_mm == body);
        CHECK(blank.area_m2 == (length * (body + 2 * flap) - (2 * a.tab_mm * flap + 6 * a.slot_mm * flap)) * 1e-6);
    }
}

TEST_CASE("a slotted box is creased, cut, printed and scored where its panels and flaps meet") {
    plant::Plant plant = fixture::small_plant();
    orders::Request request = fixture::box_request(plant);
    request.inside = orders::InsideSize{400, 300, 250};
    const plant::Allowance& a = *plant.find_allowance(plant.boards[request.board].flutes, request.style);
    const Blank blank = make_blank(plant, request);
    const double body = 250 + a.depth_mm, panels = 4 * a.panel_mm + 1400 - a.joint_mm;
    CHECK(blank.scores.along_mm.size() == 4);
    CHECK(blank.scores.across_mm == std::vector<double>{150 + a.flap_mm, 150 + a.flap_mm + body});
    CHECK(blank.crease_mm == Approx(4 * body + 2 * (panels - 3 * a.slot_mm)));
    CHECK(blank.print_area_m2 == Approx(blank.area_m2 - a.tab_mm * body * 1e-6));
}

TEST_CASE("a blank that is turned has its length and width the other way round and nothing else") {
    const auto straight = drawn("0401", size_of(400, 300, 80));
    auto size = size_of(400, 300, 80);
    size.is_turned = true;
    const auto turned = drawn("0401", size);
    CHECK(turned[0].length_mm == straight[0].width_mm);
    CHECK(turned[0].width_mm == straight[0].length_mm);
    CHECK(measure(turned[0]).area_mm2 == Approx(measure(straight[0]).area_mm2));
    CHECK(measure(turned[0]).crease_mm == Approx(measure(straight[0]).crease_mm));
}

TEST_CASE("a cut-out within a cell counts in cut and not in area, one on an edge shortens the crease") {
    const auto strips = drawn("0933", size_of(400, 300, 200));
    REQUIRE(strips.size() == 2);
    CHECK(strips[0].cells[0].holes.empty());
    CHECK(strips[0].cells[0].outline.size() > 4);
    const auto tray = drawn("0426", size_of(400, 300, 100));
    const auto base = std::find_if(tray[0].cells.begin(), tray[0].cells.end(),
                                   [](const FlatCell& cell) { return cell.name == "base"; });
    CHECK(base->holes.size() == 2);
}
