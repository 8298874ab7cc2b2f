// Each thing that is refused of a style at a size: the refusal names what, the style and the place.
#include <catch2/catch.hpp>

#include "host/base/errors.hpp"
#include "host/blanks/flat.hpp"
#include "tests/unit/box_styles/style_bench.hpp"

using namespace flutebook;
using namespace flutebook::fixture;
using blanks::StyleSize;

namespace {

StyleSize tray_size() {
    StyleSize size{};
    size.inside_mm = {400, 300, 80};
    size.caliper_mm = 3;
    size.where = "r.yaml:5:9: inside";
    return size;
}

// What is said of the first style of a text at a size; empty where it is drawn.
std::string refusal(const std::string& text, const StyleSize& size = tray_size()) {
    const auto styles = read_styles_text(text);
    try {
        static_cast<void>(blanks::draw_flat(styles.at(0), size));
    } catch (const InputError& error) {
        CHECK(error.whose() == InputError::Whose::request);
        return error.lines().front();
    }
    return "";
}

std::string tray_refusal(const std::string& old_text, const std::string& new_text) {
    return refusal(tray_with(old_text, new_text));
}

// Rows of ten cut-outs each, so many in its lower half and in its upper.
struct Vents {
    int low, high;
};

std::string vents_text(const Vents& vents) {
    const auto half = [](int count, int from) {
        return "{count: " + std::to_string(count) + ", at: [10*i - 100*floor((i - 1)/10), " + std::to_string(from) +
               " + 8*floor((i - 1)/10)], size: [4, 4]}";
    };
    return "{holes: [" + half(vents.low, 10) + ", " + half(vents.high, 150) + "]}";
}

// Three panels, the last of them narrow.
std::string vented(const Vents& a, const Vents& b, const std::string& more_cells = "") {
    return "styles:\n  V:\n    title: T\n    along: [L, L, 20]\n    across: [B]\n    map: [a | b | c]\n    fold: [b "
           "c]\n"
           "    cells:\n      a: " +
           vents_text(a) + "\n      b: " + vents_text(b) + more_cells + "\n";
}

}  // namespace

TEST_CASE("a fit style at a fit size is drawn") {
    CHECK(refusal(tray_text()).empty());
}

TEST_CASE("a length that comes to 0 or less is refused with style and place") {
    CHECK(tray_refusal("L + 2*t", "L - 400") ==
          "r.yaml:5:9: inside: a length below 0.001 mm: found 0 mm for `L - 400`; ask for a larger box; style "
          "`T-1`, s:7:16");
}

TEST_CASE("a length so small that its two ends round to one point is refused") {
    CHECK(tray_refusal("L + 2*t", "L/400000000") ==
          "r.yaml:5:9: inside: a length below 0.001 mm: found 1e-06 mm for `L/400000000`; ask for a larger box; style "
          "`T-1`, s:7:16");
    CHECK(tray_refusal("{inset: t,", "{inset: (B + t)/2 - 0.0000001,").find("its insets leave nothing") !=
          std::string::npos);
}

TEST_CASE("a length above 20 m at this size is refused") {
    CHECK(tray_refusal("L + 2*t", "51*L").find("a length above 20000 mm: found 20400 mm for `51*L`; style `T-1`") !=
          std::string::npos);
}

TEST_CASE("a sum that has no value at a size is refused") {
    CHECK(tray_refusal("L + 2*t", "L/(L - 400)*B").find("no finite number") != std::string::npos);
}

TEST_CASE("a taper that eats its cell is refused") {
    CHECK(
        tray_refusal("taper: [0, 5]", "taper: [200, 200]").find("cell `e1`: its taper leaves nothing at the far end") !=
        std::string::npos);
}

TEST_CASE("insets that eat their cell are refused") {
    CHECK(tray_refusal("{inset: t,", "{inset: B,").find("cell `e1`: its insets leave nothing of it") !=
          std::string::npos);
}

TEST_CASE("a slot that eats its cell is refused") {
    const char* text =
        "styles:\n  P:\n    title: T\n    along: [L, L]\n    across: [20, B]\n    slot: L\n    map:\n      - f1 / f2\n"
        "      - --   --\n      - a | b\n    fold: [b, f1 f2]\n";
    StyleSize size = tray_size();
    CHECK(refusal(text, size).empty());
    CHECK(refusal(std::string(text).replace(std::string(text).find("slot: L"), 7, "slot: 3*L"), size)
              .find("no flap is left between two slots: found slots of 1200 mm in a width of 400 mm") !=
          std::string::npos);
}

TEST_CASE("a cut-out that leaves its cell is refused") {
    CHECK(
        tray_refusal("size: [10, 20]", "size: [10, 400]").find("cell `base`: a cut-out leaves its cell or overlaps") !=
        std::string::npos);
}

TEST_CASE("a cut-out that parts its cell is refused") {
    CHECK(tray_refusal("at: [30*i, 40], size: [10, 20]", "at: [30*i, 0], size: [10, d]")
              .find("cell `base`: a cut-out parts its cell") != std::string::npos);
}

TEST_CASE("a cut-out that overlaps another is refused") {
    CHECK(tray_refusal("at: [30*i, 40]", "at: [30 + i, 40]").find("as number 2") != std::string::npos);
}

TEST_CASE("cut-outs beyond what a cell may have are refused") {
    CHECK(refusal(vented({150, 50}, {0, 0})).empty());
    CHECK(refusal(vented({150, 51}, {0, 0})) ==
          "r.yaml:5:9: inside: cell `a`: too many cut-outs: found 201, expected at most 200; style `V`, s:6:11");
}

TEST_CASE("cut-outs beyond what a blank may have are refused at the cell that has too many") {
    CHECK(refusal(vented({150, 50}, {150, 50})).empty());
    CHECK(refusal(vented({150, 50}, {150, 50}, "\n      c: {holes: [{at: [5, 5], size: [4, 4]}]}")) ==
          "r.yaml:5:9: inside: cell `c`: too many cut-outs in one blank: found 401 up to this cell, expected at most "
          "400; style `V`, s:6:19");
}

TEST_CASE("a count that is no whole number is refused") {
    CHECK(tray_refusal("count: 2, at", "count: L/300, at").find("not a count: found 1.33") != std::string::npos);
}

TEST_CASE("an outline that crosses itself is refused") {
    CHECK(tray_refusal("taper: [0, 5]", "shape: [[0, 0], [w, d], [w, 0], [0, d]]")
              .find("cell `e1`: its outline crosses itself") != std::string::npos);
}

TEST_CASE("cells on one another on the blank are refused") {
    CHECK(tray_refusal("e1 e2: {inset: t, taper: [0, 5]}", "e1: {inset: -20}\n      back: {inset: -20}")
              .find("cells on one another on the blank: found `") != std::string::npos);
}

TEST_CASE("a measure outside its range is refused, given or left out") {
    StyleSize size = tray_size();
    size.measures = {{"lip", 81}};
    CHECK(
        refusal(tray_text(), size) ==
        "r.yaml:5:9: inside: measure `lip` is out of its range: found 81, expected 0 to 80 (how far the lip reaches); "
        "style `T-1`, s:5:26");
    CHECK(tray_refusal("default: 20", "default: H + 1").find("found 81 where it is left out") != std::string::npos);
}

TEST_CASE("a requirement that does not hold is refused with its text") {
    CHECK(tray_refusal("cover: {top: 0}", "require: {B - L: too long for its width}")
              .find("inside: too long for its width: found `B - L` below 0") != std::string::npos);
}

TEST_CASE("an allowance that the board lacks is refused") {
    CHECK(tray_refusal("L + 2*t", "L + panel").find("`panel` has no value; the board has no allowances") !=
          std::string::npos);
}

TEST_CASE("a cell on an edge that is not straight is refused") {
    CHECK(tray_refusal("base: {holes: [{count: 2, at: [30*i, 40], size: [10, 20]}]}",
                       "back: {shape: [[0, 0], [w, 0], [w/2, d]]}")
              .find("cell `lip`: hangs on no straight edge of `back`") != std::string::npos);
}
