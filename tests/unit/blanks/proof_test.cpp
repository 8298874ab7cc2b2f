// The proof by folding: one test a fault, on blanks drawn by hand.
#include <catch2/catch.hpp>

#include "host/blanks/proof.hpp"
#include "tests/unit/blanks/drawn_blanks.hpp"

using namespace flutebook;
using blanks::FoldingFault;
using blanks::FoldingProof;
using Kind = blanks::FoldingFault::Kind;
using Catch::Matchers::Contains;

namespace {

std::string told(const FoldingProof& proof) {
    std::string all;
    for (const FoldingFault& fault : proof.faults) all += fault.text + "\n";
    return all;
}

// Proves a blank that must show a fault of this kind, and tells what was found.
std::string faults_of(const blanks::FlatBlank& blank, Kind kind) {
    const FoldingProof proof = blanks::prove({blank});
    std::string of_kind;
    for (const FoldingFault& fault : proof.faults)
        if (fault.kind == kind) of_kind += fault.text + "\n";
    INFO(told(proof));
    REQUIRE(!of_kind.empty());
    return of_kind;
}

// A tray of four walls, open at the top; mm inside, board of 3 mm.
fixture::DrawnBlank tray(double length, double breadth, double height, const std::string& piece) {
    const double l = length + 3, b = breadth + 3, h = height + 1.5;
    fixture::DrawnBlank box(3, "base", {h, h, h + l, h + b});
    box.hang("left", "base", {0, h, h, h + b}).hang("right", "base", {h + l, h, 2 * h + l, h + b});
    box.hang("back", "base", {h, 0, h + l, h}).hang("front", "base", {h, h + b, h + l, 2 * h + b});
    box.step({"left", "right", "back", "front"});
    box.inside(0, "left", "right", length).inside(1, "front", "back", breadth).inside(2, "base", "", height);
    box.blank.piece = piece;
    box.blank.cover[5] = 0;
    return box;
}

}  // namespace

TEST_CASE("a slotted box folds, and the proof tells its inside with all layers pushed in and out") {
    const FoldingProof proof = blanks::prove({fixture::slotted_box().blank}, blanks::SizeBounds::library);
    INFO(told(proof));
    REQUIRE(proof.holds());
    const auto& height = proof.pieces.at(0).inside_mm[2];
    REQUIRE(height->pushed_in_mm == Approx(247));  // two layers at either end
    REQUIRE(height->pushed_out_mm == Approx(253));
    REQUIRE(proof.pieces.at(0).inside_mm[1]->pushed_out_mm == Approx(300));
}

TEST_CASE("outside less inside of a slotted box is two layers along L and B and four along H") {
    const auto walls = blanks::folded_walls_mm(fixture::slotted_box().blank);
    REQUIRE(*walls[0] == Approx(6));  // the tab lies where the drawing leaves it no room
    REQUIRE(*walls[1] == Approx(6));
    REQUIRE(*walls[2] == Approx(12));
}

TEST_CASE("what a style says of its walls counts instead of what folding measures") {
    blanks::FlatBlank blank = fixture::slotted_box().blank;
    blank.walls_mm[2] = 14;
    REQUIRE(*blanks::folded_walls_mm(blank)[2] == 14);
}

TEST_CASE("fault 1: flaps folded in one step that land on one another are found with their step") {
    fixture::SlottedSizes sizes;
    sizes.outer_flap = 160;
    const std::string told_faults = faults_of(fixture::slotted_box(sizes).blank, Kind::landing);
    REQUIRE_THAT(told_faults, Contains("step 3: g1 and g3 land on one another, 17.0 mm deep"));
    REQUIRE_THAT(told_faults, Contains("step 5: f1 and f3"));
}

TEST_CASE("fault 1 is none where the flaps fold in two steps: the later lies on the earlier") {
    fixture::SlottedSizes sizes;
    sizes.outer_flap = 160;
    blanks::FlatBlank blank = fixture::slotted_box(sizes).blank;
    std::vector<std::vector<std::size_t>> fold;
    for (const auto& step : blank.fold) {
        if (step.size() == 4)
            fold.push_back(step);
        else
            for (const std::size_t cell : step) fold.push_back({cell});
    }
    blank.fold = fold;
    const FoldingProof proof = blanks::prove({blank});
    INFO(told(proof));
    REQUIRE(proof.holds());
}

TEST_CASE("fault 2: two cells that pass through one another are found with how far from their edges") {
    // Two walls, each 200 mm, lean over their base of 200 mm from either side and meet 141.4 mm up.
    fixture::DrawnBlank box(3, "base", {200, 200, 400, 400});
    box.hang("left", "base", {0, 200, 200, 400}, 135).hang("right", "base", {400, 200, 600, 400}, 135);
    box.step({"left"}).step({"right"});
    REQUIRE_THAT(faults_of(box.blank, Kind::cutting),
                 Contains("step 2: left and right pass through one another, 58.6 mm from their edges"));
    box.blank.cells[2].outline[1].x = box.blank.cells[2].outline[2].x = 545;  // now they touch by 3.6 mm: 1.2 t
    REQUIRE(blanks::prove({box.blank}).holds());
}

TEST_CASE("fault 2: a flap that is folded last cannot come to lie under one that was folded first") {
    fixture::DrawnBlank box(3, "base", {100, 100, 400, 300});
    box.hang("left", "base", {-6, 100, 100, 300}).hang("right", "base", {400, 100, 500, 300});
    box.hang("under", "left", {-206, 100, -6, 300}).hang("over", "right", {500, 100, 700, 300});
    box.step({"left", "right"}).step({"under"}).step({"over"});  // under comes to stand 6 mm above over
    REQUIRE_THAT(faults_of(box.blank, Kind::cutting), Contains("over and under pass through one another"));
}

TEST_CASE("fault 3: an inside that is too small or too large is found, with both spans") {
    blanks::FlatBlank blank = fixture::slotted_box().blank;
    blank.size_mm[2] = 260;
    REQUIRE_THAT(faults_of(blank, Kind::size),
                 Contains("inside H between g2 and f2: 7.0 mm too small: 253.0 mm, 247.0 with all layers pushed in; "
                          "asked for 260.0"));
    blank.size_mm[2] = 240;
    REQUIRE_THAT(faults_of(blank, Kind::size), Contains("13.0 mm too large"));
    blank.size_mm[2] = 245;  // 8 mm, in the middle 5: within 3 t + 1, not within t + 1
    REQUIRE(blanks::prove({blank}).holds());
    REQUIRE_FALSE(blanks::prove({blank}, blanks::SizeBounds::library).holds());
}

TEST_CASE("fault 3: walls that are not parallel have no inside") {
    fixture::DrawnBlank box = tray(300, 200, 100, "");
    box.blank.cells[box.at("right")].angle_deg = 80;
    REQUIRE_THAT(faults_of(box.blank, Kind::size),
                 Contains("inside L between left and right: the two are not parallel"));
}

TEST_CASE("fault 4: a cell that stands in the inside or out of the box is found with its distance") {
    fixture::DrawnBlank box = tray(300, 200, 100, "");
    box.hang("shelf", "left", {-60, 120, 0, 200}).step({"shelf"});
    box.blank.cells.back().hinge = {{0, 200}, {0, 120}};
    box.blank.cells.back().angle_deg = 150;
    REQUIRE_THAT(faults_of(box.blank, Kind::reach), Contains("shelf stands in the inside"));
    box.blank.cells.back().angle_deg = -90;
    REQUIRE_THAT(faults_of(box.blank, Kind::reach), Contains("shelf stands 60.0 mm out of the box, along L"));
}

TEST_CASE("fault 5: a face that is open or covered otherwise than the style says is found with its share") {
    fixture::SlottedSizes sizes;
    sizes.outer_flap = 120;
    const std::string told_faults = faults_of(fixture::slotted_box(sizes).blank, Kind::cover);
    REQUIRE_THAT(told_faults, Contains("bottom is covered to"));
    REQUIRE_THAT(told_faults, Contains("should be 100.0 %"));
    blanks::FlatBlank open = tray(300, 200, 100, "").blank;
    REQUIRE(blanks::prove({open}).holds());
    open.cover[5] = 1;
    REQUIRE_THAT(faults_of(open, Kind::cover), Contains("top is covered to 0.0 %, should be 100.0 %"));
}

TEST_CASE("fault 6: a joined cell that does not come to lie on its partner is found") {
    fixture::DrawnBlank box = fixture::slotted_box();
    box.blank.joins[0].partner = box.at("p3");
    REQUIRE_THAT(faults_of(box.blank, Kind::joint), Contains("joint tab on p3: the two are not parallel"));
    box.blank.joins[0].partner = box.at("p2");
    REQUIRE_THAT(faults_of(box.blank, Kind::joint), Contains("joint tab on p2: 403.0 mm apart"));
    fixture::DrawnBlank short_panel = fixture::slotted_box();
    blanks::FlatCell& last = short_panel.blank.cells[short_panel.at("p4")];
    last.outline[1].x = last.outline[2].x -= 10;
    REQUIRE_THAT(faults_of(short_panel.blank, Kind::joint), Contains("only 60 % lies on its partner"));
}

TEST_CASE("fault 7: a lid that does not go over its body is found with what lacks") {
    blanks::FlatBlank body = tray(300, 200, 100, "body").blank;
    blanks::FlatBlank lid = tray(310, 204, 50, "lid").blank;
    lid.over = 0;
    const FoldingProof proof = blanks::prove({body, lid});
    REQUIRE(proof.faults.size() == 1);
    REQUIRE(proof.faults[0].kind == Kind::fit);
    REQUIRE(proof.faults[0].text ==
            "lid: does not go over body: B is 204.0 mm inside and 206.0 mm are needed, 2.0 mm too little");
    blanks::FlatBlank wide_lid = tray(310, 210, 50, "lid").blank;
    wide_lid.over = 0;
    REQUIRE(blanks::prove({body, wide_lid}).holds());
}

TEST_CASE("a flat sheet has nothing to prove") {
    const FoldingProof proof = blanks::prove({fixture::DrawnBlank(3, "sheet", {0, 0, 400, 300}).blank});
    REQUIRE(proof.holds());
    REQUIRE_FALSE(proof.pieces.at(0).inside_mm[0].has_value());
}

TEST_CASE("a box whose every angle has the wrong sign is turned inside out, and is refused however well it closes") {
    blanks::FlatBlank blank = fixture::slotted_box().blank;
    for (blanks::FlatCell& cell : blank.cells) cell.angle_deg = -cell.angle_deg;
    const FoldingProof proof = blanks::prove({blank});
    INFO(told(proof));
    REQUIRE(proof.faults.size() == 1);
    REQUIRE(proof.faults[0].kind == Kind::side);
    REQUIRE_THAT(proof.faults[0].text, Contains("turned inside out: 100 % of its board"));
    REQUIRE(blanks::prove({tray(300, 200, 80, "").blank}).holds());
}
