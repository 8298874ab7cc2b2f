// Folded boxes painted face by face: at every point of the picture the nearest face must be painted last.
#include "host/drawings/painter.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "host/drawings/folded_drawing.hpp"
#include "host/render/svg.hpp"
#include "tests/unit/blanks/drawn_blanks.hpp"

using namespace flutebook;
using namespace flutebook::drawings;
using blanks::FlatBlank;
using blanks::Vec3;

namespace {

struct SeenPoint {
    double x, y;
};

Vec3 of_length_1(const Vec3& direction) {
    return (1 / length(direction)) * direction;
}

View view_from(const Vec3& nearer) {
    const Vec3 to_reader = of_length_1(nearer), right = of_length_1(cross({0, 1, 0}, to_reader));
    return {right, -1.0 * cross(to_reader, right), to_reader};
}

SeenPoint seen(const Vec3& point, const View& view) {
    return {dot(point, view.right), dot(point, view.down)};
}

bool covers(const PaintedFace& face, SeenPoint at, const View& view) {
    bool is_inside = false;
    const auto& outline = face.face.outline;
    for (std::size_t i = 0, j = outline.size() - 1; i < outline.size(); j = i++) {
        const SeenPoint a = seen(outline[i], view), b = seen(outline[j], view);
        if ((a.y > at.y) != (b.y > at.y) && at.x < (b.x - a.x) * (at.y - a.y) / (b.y - a.y) + a.x)
            is_inside = !is_inside;
    }
    return is_inside;
}

// How near the face is to the reader at a point of the picture.
double nearness(const PaintedFace& face, SeenPoint at, const View& view) {
    const Vec3& normal = face.face.normal;
    const Vec3 start = at.x * view.right + at.y * view.down;
    return dot(face.face.outline.front() - start, normal) / dot(view.nearer, normal);
}

std::vector<PaintedFace> faces_of(const FlatBlank& blank, double steps) {
    std::vector<PaintedFace> result;
    for (auto& face : blanks::folded_faces(blank, steps)) {
        std::size_t turn = 0;
        for (std::size_t step = 0; step < blank.fold.size(); ++step)
            for (const std::size_t cell : blank.fold[step])
                if (cell == face.cell) turn = step + 1;
        result.push_back({face, turn});
    }
    return result;
}

// How far the picture is from true: the most that a face lies behind another that it was painted over.
double most_wrong_mm(const FlatBlank& blank, double steps, const View& view) {
    const auto faces = faces_of(blank, steps);
    const auto order = painting_order(faces, view, 3.2 * blank.caliper_mm);
    double worst = 0;
    for (double x = -900; x < 900; x += 11)
        for (double y = -900; y < 900; y += 11) {
            double nearest = -1e9, painted = -1e9;
            for (const std::size_t i : order) {
                if (std::abs(dot(faces[i].face.normal, view.nearer)) < 0.02 || !covers(faces[i], {x, y}, view))
                    continue;
                painted = nearness(faces[i], {x, y}, view);
                nearest = std::max(nearest, painted);
            }
            worst = std::max(worst, nearest - painted);
        }
    return worst;
}

fixture::DrawnBlank tray_of_five() {
    fixture::DrawnBlank tray(3, "base", {50, 50, 350, 250});
    tray.hang("left", "base", {0, 50, 50, 250}).hang("right", "base", {350, 50, 400, 250});
    tray.hang("back", "base", {50, 0, 350, 50}).hang("front", "base", {50, 250, 350, 300});
    tray.step({"back", "front"}).step({"left", "right"});
    tray.inside(0, "left", "right", 300).inside(2, "base", "", 50);
    return tray;
}

}  // namespace

TEST_CASE("of a folded and of a half open box the nearest face is painted last, from every side") {
    const fixture::DrawnBlank box = fixture::slotted_box(), tray = tray_of_five();
    for (const Vec3& from : {Vec3{0.5, 0.6, 0.7}, Vec3{-0.7, 0.4, 0.5}, Vec3{0.3, 0.8, -0.6}, Vec3{-0.4, -0.5, -0.9}}) {
        const View view = view_from(from);
        for (const double back : {0.0, 0.5, 1.5, 2.5})
            CHECK(most_wrong_mm(box.blank, static_cast<double>(box.blank.fold.size()) - back, view) < 25);
        for (const double back : {0.0, 0.5, 1.5})
            CHECK(most_wrong_mm(tray.blank, static_cast<double>(tray.blank.fold.size()) - back, view) < 25);
    }
}

TEST_CASE("a folded box and a half open one are drawn with all their cells, standing upright") {
    const fixture::DrawnBlank box = fixture::slotted_box();
    const render::Drawing closed = closed_drawing(box.blank), open = half_open_drawing(box.blank);
    CHECK(closed.polygons.size() == box.blank.cells.size());
    CHECK(open.polygons.size() == box.blank.cells.size());
    CHECK(closed.title == "Box, folded");
    CHECK(open.title == "Box, half open");
    const auto highest = [](const render::Drawing& drawing, const std::string& name) {
        double result = 1e9;
        for (const auto& polygon : drawing.polygons)
            if (polygon.name.rfind(name, 0) == 0)
                for (const auto& point : polygon.outline) result = std::min(result, point.y_mm);
        return result;
    };
    // Upper flaps stand above the panels where the box is open; y runs downwards.
    CHECK(highest(open, "f1") < highest(open, "p1") - 50);
    CHECK(highest(closed, "f1") > highest(open, "f1") + 50);
    CHECK(render::svg_file({{closed}}) == render::svg_file({{closed_drawing(box.blank)}}));
}

TEST_CASE("a flap that is drawn inside of a wall is painted behind it, though it is folded later") {
    fixture::DrawnBlank tray = tray_of_five();
    // The lid hangs on the back and ends a thickness before the front.
    tray.hang("lid", "back", {50, -197, 350, 0}).hang("tuck", "lid", {60, -227, 340, -197});
    tray.step({"lid", "tuck"});
    const render::Drawing drawing = closed_drawing(tray.blank);
    const auto painted = [&](const std::string& name) {
        return std::find_if(drawing.polygons.begin(), drawing.polygons.end(),
                            [&](const auto& polygon) { return polygon.name.rfind(name, 0) == 0; }) -
               drawing.polygons.begin();
    };
    CHECK(painted("tuck") < painted("front"));
    CHECK(painted("front") < static_cast<std::ptrdiff_t>(drawing.polygons.size()));
}

TEST_CASE("a piece of a set is named in its picture, and a tray shows its inside") {
    fixture::DrawnBlank tray = tray_of_five();
    tray.blank.piece = "lid";
    const render::Drawing drawing = closed_drawing(tray.blank);
    CHECK(drawing.title == "lid, folded");
    CHECK(std::any_of(drawing.polygons.begin(), drawing.polygons.end(),
                      [](const auto& polygon) { return polygon.name == "base, its inside"; }));
}
