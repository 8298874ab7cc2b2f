// Cells in space, step by step.
#include <catch2/catch.hpp>

#include "host/blanks/fold.hpp"
#include "tests/unit/blanks/drawn_blanks.hpp"

using namespace flutebook;
using blanks::Placement;
using blanks::Vec3;

namespace {

void require_near(const Vec3& a, const Vec3& b) {
    INFO(a.x << " " << a.y << " " << a.z << " against " << b.x << " " << b.y << " " << b.z);
    REQUIRE(blanks::length(a - b) < 1e-9);
}

}  // namespace

TEST_CASE("what folds by 90 degrees rises towards the reader, on whichever side it hangs") {
    fixture::DrawnBlank tray(3, "base", {100, 100, 300, 200});
    tray.hang("left", "base", {50, 100, 100, 200}).hang("right", "base", {300, 100, 350, 200});
    tray.hang("up", "base", {100, 50, 300, 100}).hang("down", "base", {100, 200, 300, 250});
    tray.step({"left", "right", "up", "down"});
    const std::vector<Placement> placements = blanks::fold(tray.blank, 1);
    require_near(placements[1].placed({50, -150, 0}), {100, -150, 50});
    require_near(placements[2].placed({350, -150, 0}), {300, -150, 50});
    require_near(placements[3].placed({200, -50, 0}), {200, -100, 50});
    require_near(placements[4].placed({200, -250, 0}), {200, -200, 50});
}

TEST_CASE("the reader's side of every wall faces the inside of the box") {
    const blanks::FlatBlank box = fixture::slotted_box().blank;
    const std::vector<blanks::FoldedFace> faces = blanks::folded_faces(box, 5);
    Vec3 middle = {0, 0, 0};
    for (std::size_t i = 0; i < faces.size(); ++i)
        middle = middle + 1.0 / static_cast<double>(faces.size()) * faces[i].outline[0];
    for (const blanks::FoldedFace& face : faces) REQUIRE(blanks::dot(face.normal, middle - face.outline[0]) > 0);
}

TEST_CASE("a ring of four panels closes: the fourth stands beside the first") {
    const fixture::DrawnBlank box = fixture::slotted_box();
    const std::vector<Placement> placements = blanks::fold(box.blank, 5);
    const blanks::FlatCell& last = box.blank.cells[box.at("p4")];
    const Vec3 free_corner = placements[box.at("p4")].placed(blanks::in_space(last.outline[1]));
    require_near(free_corner, {30, -151.5, 2});  // short of the first by what the joint takes
}

TEST_CASE("half of a step turns its cells by half their angle and leaves later steps flat") {
    const fixture::DrawnBlank box = fixture::slotted_box();
    const std::vector<Placement> half = blanks::fold(box.blank, 0.5);
    REQUIRE(half[box.at("p2")].z.z == Approx(std::sqrt(0.5)));
    require_near(half[box.at("p1")].z, {0, 0, 1});
    require_near(half[box.at("g1")].z, {0, 0, 1});
    require_near(half[box.at("g2")].z, half[box.at("p2")].z);
}

TEST_CASE("folding moves a cell and never stretches it") {
    const fixture::DrawnBlank box = fixture::slotted_box();
    for (const double steps : {0.0, 0.3, 1.0, 2.7, 5.0})
        for (const blanks::FoldedFace& face : blanks::folded_faces(box.blank, steps))
            for (std::size_t i = 0; i < 4; ++i) {
                const blanks::Polygon& flat = box.blank.cells[face.cell].outline;
                const double drawn = blanks::length(blanks::in_space(flat[i]) - blanks::in_space(flat[(i + 1) % 4]));
                REQUIRE(blanks::length(face.outline[i] - face.outline[(i + 1) % 4]) == Approx(drawn).epsilon(1e-12));
            }
}
