// Sheets and webs of hand-made quotes as drawings.
#include "host/reports/layout_drawings.hpp"

#include <catch2/catch.hpp>
#include <cmath>

#include "host/render/svg.hpp"

using namespace flutebook;
using namespace flutebook::drawings;
using namespace flutebook::reports;
using render::DrawnPolygon;

namespace {

answers::Quote quote_of(double nx, double ny, const SheetGaps& gaps) {
    answers::Quote quote{};
    quote.blank = {400, 250, 0.1, 0};
    quote.nx = nx;
    quote.ny = ny;
    quote.ups = nx * ny;
    quote.chop_mm = nx * 400 + (nx - 1) * gaps.between_mm + 2 * gaps.edge_mm;
    quote.slit_mm = ny * 250 + (ny - 1) * gaps.between_mm + 2 * gaps.edge_mm;
    quote.outs = 3;
    quote.roll_width_mm = 3 * quote.slit_mm + 60;
    quote.trim_mm = 60;
    return quote;
}

plant::Plant plant_with(double between_mm, double edge_mm) {
    plant::Plant plant{};
    plant::Converter cutter{};
    cutter.code = "DC1";
    cutter.kind = plant::Converter::Kind::die_cutter;
    cutter.between_mm = between_mm;
    cutter.edge_mm = edge_mm;
    plant.converters.push_back(cutter);
    return plant;
}

double area_of(const std::vector<render::DrawnPoint>& corners) {
    double twice = 0;
    for (std::size_t i = 0; i < corners.size(); ++i) {
        const auto& a = corners[i];
        const auto& b = corners[(i + 1) % corners.size()];
        twice += a.x_mm * b.y_mm - b.x_mm * a.y_mm;
    }
    return std::abs(twice) / 2;
}

double area_of(const render::Drawing& drawing, DrawnPolygon::Kind kind) {
    double result = 0;
    for (const DrawnPolygon& polygon : drawing.polygons)
        if (polygon.kind == kind) result += area_of(polygon.outline);
    return result;
}

}  // namespace

TEST_CASE("what lies between blanks and at the edges is told from the sheet's own size") {
    const plant::Plant none{};
    for (const auto& [nx, ny] : {std::pair(2.0, 1.0), std::pair(1.0, 3.0), std::pair(4.0, 2.0)}) {
        const SheetGaps gaps = sheet_gaps(none, quote_of(nx, ny, {8, 12, true}));
        CHECK(gaps.between_mm == Approx(8));
        CHECK(gaps.edge_mm == Approx(12));
        CHECK(gaps.is_known);
    }
    CHECK(sheet_gaps(none, quote_of(1, 1, {8, 12, true})).edge_mm == Approx(12));
}

TEST_CASE("where as many blanks lie along as across, the die cutter tells the gaps, or nobody does") {
    answers::Quote quote = quote_of(2, 2, {8, 12, true});
    quote.route = {"DC1"};
    const SheetGaps known = sheet_gaps(plant_with(8, 12), quote);
    CHECK(known.is_known);
    CHECK(known.between_mm == 8);
    CHECK(known.edge_mm == 12);
    const SheetGaps even = sheet_gaps(plant::Plant{}, quote);
    CHECK_FALSE(even.is_known);
    CHECK(even.between_mm + 2 * even.edge_mm == Approx(32));
}

TEST_CASE("the board and the hatched board of a sheet and of a web have their right areas") {
    const plant::Plant plant{};
    const orders::Request request{};
    const SheetContext context(plant, request);
    const answers::Quote quote = quote_of(2, 3, {8, 12, true});
    const render::Drawing sheet = sheet_drawing(context, quote);
    CHECK(area_of(sheet, DrawnPolygon::Kind::board) == Approx(6 * 400 * 250));
    CHECK(area_of(sheet, DrawnPolygon::Kind::lost) == Approx(quote.chop_mm * quote.slit_mm));
    const render::Drawing web = web_drawing(context, quote);
    const double trim = area_of(web, DrawnPolygon::Kind::lost), board = area_of(web, DrawnPolygon::Kind::board);
    CHECK(trim / (trim + board) == Approx(60 / quote.roll_width_mm));
}

TEST_CASE("a sheet that is its blank hatches nothing, nor does a web without trim") {
    const plant::Plant plant{};
    const orders::Request request{};
    const SheetContext context(plant, request);
    answers::Quote quote = quote_of(1, 1, {0, 0, true});
    quote.trim_mm = 0;
    quote.roll_width_mm = 3 * quote.slit_mm;
    CHECK(area_of(sheet_drawing(context, quote), DrawnPolygon::Kind::lost) == 0);
    CHECK(area_of(web_drawing(context, quote), DrawnPolygon::Kind::lost) == 0);
    CHECK(web_drawing(context, quote).note == "in mm; no trim");
}

TEST_CASE("a sheet of more blanks than a picture can show is drawn as one") {
    const plant::Plant plant{};
    const orders::Request request{};
    const SheetContext context(plant, request);
    const answers::Quote quote = quote_of(100, 90, {8, 12, true});
    CHECK(sheet_drawing(context, quote).polygons.size() == 2);
    CHECK(render::svg_file({{sheet_drawing(context, quote)}}).size() < 100'000);
}
