// Each thing that is refused of a style before any size is known, at its place.
#include <catch2/catch.hpp>

#include "tests/unit/box_styles/style_bench.hpp"

using flutebook::fixture::style_complaints;
using flutebook::fixture::tray_text;
using flutebook::fixture::tray_with;

namespace {

using Complaints = std::vector<std::string>;

Complaints tray_complaints(const std::string& old_text, const std::string& new_text) {
    return style_complaints(tray_with(old_text, new_text));
}

}  // namespace

TEST_CASE("a valid style gives no error") {
    CHECK(style_complaints(tray_text()).empty());
}

TEST_CASE("an unknown key of a style is refused") {
    CHECK(tray_complaints("cover: {top: 0}", "covers: {top: 0}") ==
          Complaints{"22:5: styles.T-1.covers: unknown key; did you mean `cover`"});
}

TEST_CASE("a key of a style that stands twice is refused") {
    CHECK(tray_complaints("    cover: {top: 0}", "    cover: {top: 0}\n    title: B") ==
          Complaints{"23:5: styles.T-1.title: duplicate key, expected each key once"});
}

TEST_CASE("a style that is like an unknown one is refused, with no near number") {
    CHECK(tray_complaints("title: A tray", "title: A tray\n    like: T-9") ==
          Complaints{"4:11: styles.T-1.like: unknown style: found `T-9`, expected one that is there"});
}

TEST_CASE("a style whose `like` names itself is refused") {
    CHECK(tray_complaints("title: A tray", "title: A tray\n    like: T-1") ==
          Complaints{"4:11: styles.T-1.like: a style that is like itself: expected another"});
}

TEST_CASE("a map row with too few cells is refused at the row") {
    CHECK(tray_complaints("e1 | base | e2", "e1 | base") ==
          Complaints{"14:9: styles.T-1.map[5]: a row with too few cells: found 2, expected 3 as `along` has"});
}

TEST_CASE("a map row with too many cells is refused at the row") {
    CHECK(tray_complaints("e1 | base | e2", "e1 | base | e2 e3") ==
          Complaints{"14:9: styles.T-1.map[5]: a row with too many cells: found 4, expected 3 as `along` has"});
}

TEST_CASE("a row of creases of another length is refused") {
    CHECK(tray_complaints("      - .    --    .\n      - .    back", "      - .    --\n      - .    back") ==
          Complaints{"11:9: styles.T-1.map[2]: a row with too few creases: found 2, expected 3 as `along` has"});
}

TEST_CASE("a sign without meaning is refused at its column") {
    CHECK(tray_complaints("e1 | base | e2", "e1 + base | e2") ==
          Complaints{"14:12: styles.T-1.map[5]: an unknown sign: found `+`, expected a cell's name, `.`, `|` or `/`"});
}

TEST_CASE("a word in a row of creases is refused at its column") {
    CHECK(tray_complaints("      - .    --    .\n      - .    back", "      - .    --    x\n      - .    back") ==
          Complaints{"11:20: styles.T-1.map[2]: an unknown sign: found `x` in a row of creases, expected `--` or `.`"});
}

TEST_CASE("a crease beside nothing is refused at its column") {
    CHECK(tray_complaints(".    back  .", ". |  back  .") ==
          Complaints{"12:11: styles.T-1.map[3]: a `|` beside nothing: expected a cell on both of its sides"});
}

TEST_CASE("a slot beside nothing is refused at its column") {
    CHECK(tray_complaints("e1 | base | e2", "e1 | base /") ==
          Complaints{"14:19: styles.T-1.map[5]: a `/` beside nothing: expected a cell on both of its sides"});
}

TEST_CASE("a crease below nothing is refused at its column") {
    CHECK(tray_complaints("      - .    --    .\n      - .    front", "      - --   --    .\n      - .    front") ==
          Complaints{"15:9: styles.T-1.map[6]: a `--` beside nothing: expected a cell on both of its sides"});
}

TEST_CASE("cells of one name that form no rectangle are refused") {
    CHECK(tray_complaints(".    lip   .", "e1   lip   .") ==
          Complaints{"10:9: styles.T-1.map: cells of one name that form no rectangle: found 2 of `e1` in 3 places, "
                     "expected each cell to fill its rectangle"});
}

TEST_CASE("another number of rows than across has is refused") {
    CHECK(tray_complaints("      - .    lip   .\n      - .    --    .\n", "") ==
          Complaints{
              "10:7: styles.T-1.map: another number of rows than `across` has: found 3 rows of cells, expected 4"});
}

TEST_CASE("a cell that hangs on no crease is refused") {
    CHECK(tray_complaints("e1 | base | e2", "e1   base | e2") ==
          Complaints{"14:9: styles.T-1.map: a cell that hangs on no crease: `e1` is not joined by creases to `base`, "
                     "which stays"});
}

TEST_CASE("a cell that the map lacks is refused in cells") {
    CHECK(tray_complaints("e1 e2: {inset", "e1 e9: {inset") ==
          Complaints{"18:10: styles.T-1.cells.e9: a cell that the map lacks: found `e9`, expected one of the map"});
}

TEST_CASE("a cell that the map lacks is refused in join") {
    CHECK(tray_complaints("cover:", "join: {e1: e9}\n    cover:") ==
          Complaints{"22:16: styles.T-1.join.e1: a cell that the map lacks: found `e9`, expected one of the map"});
}

TEST_CASE("a cell that the map lacks is refused in inside") {
    CHECK(tray_complaints("L: [e1, e2]", "L: [e1, e8]") ==
          Complaints{"21:22: styles.T-1.inside.L[2]: a cell that the map lacks: found `e8`, expected one of the map"});
}

TEST_CASE("a cell that is folded twice is refused") {
    CHECK(tray_complaints("lip -90]", "lip -90 e1]") ==
          Complaints{"20:31: styles.T-1.fold[3]: a cell that is folded twice: found `e1`, expected each once"});
}

TEST_CASE("a cell that fold leaves out is refused") {
    CHECK(tray_complaints("lip -90]", "]") == Complaints{"14:14: styles.T-1.map: a cell that is left out of `fold`: "
                                                         "found `lip` and `base`, expected one alone that stays"});
}

TEST_CASE("a style of which no cell stays is refused") {
    CHECK(
        tray_complaints("lip -90]", "lip -90 base]") ==
        Complaints{"10:7: styles.T-1.map: every cell is folded: expected one that stays, named in no step of `fold`"});
}

TEST_CASE("an angle before any cell is refused") {
    CHECK(tray_complaints("[e1 e2,", "[45 e1 e2,") ==
          Complaints{"20:12: styles.T-1.fold[1]: an angle before any cell: found `45`, expected the cell that it folds "
                     "before it"});
}

TEST_CASE("an angle beyond 180 is refused") {
    CHECK(tray_complaints("lip -90", "lip -190") ==
          Complaints{"20:31: styles.T-1.fold[3]: an angle beyond 180: found `-190`, expected -180 to 180"});
}

TEST_CASE("a sum that cannot be read is refused") {
    CHECK(
        tray_complaints("L + 2*t", "L + + t") ==
        Complaints{
            "7:16: styles.T-1.along[2]: not a sum: found `L + + t`: at character 5, expected a number, a name or `(`"});
}

TEST_CASE("an unknown name in a sum is refused with those that are known") {
    CHECK(tray_complaints("L + 2*t", "L + 2*q") ==
          Complaints{"7:16: styles.T-1.along[2]: an unknown name: found `q` in `L + 2*q`, expected one of L, B, H, t, "
                     "panel, depth, flap, joint, tab, slot, in, lip, h"});
}

TEST_CASE("a second value in a style's sum is refused") {
    CHECK(tray_complaints("cover: {top: 0}", "cover: {top: \"1,5\"}") ==
          Complaints{
              "22:18: styles.T-1.cover.top: not a sum: found `1,5`: a second value begins at `,`; expected one value"});
}

TEST_CASE("an area where a length belongs is refused") {
    CHECK(tray_complaints("L + 2*t", "L*B") ==
          Complaints{"7:16: styles.T-1.along[2]: no length: found `L*B`, which grows with the square of its names as "
                     "an area does; expected a length"});
}

TEST_CASE("a sum of numbers alone that is not finite is refused") {
    CHECK(tray_complaints("L + 2*t", "1/0") == Complaints{"7:16: styles.T-1.along[2]: no finite number: found `1/0`"});
}

TEST_CASE("a length of 0 is refused") {
    CHECK(tray_complaints("L + 2*t", "0") ==
          Complaints{"7:16: styles.T-1.along[2]: a length below 0.001 mm: found `0`"});
}

TEST_CASE("a length above 20 m is refused") {
    CHECK(tray_complaints("L + 2*t", "20001") ==
          Complaints{"7:16: styles.T-1.along[2]: a length above 20000 mm: found `20001`"});
}

TEST_CASE("a name of let that is taken is refused") {
    CHECK(tray_complaints("let: {h: H", "let: {L: 1, h: H") ==
          Complaints{"6:11: styles.T-1.let.L: a name that is taken: found `L`, expected a new one"});
}

TEST_CASE("a name of ask that is taken is refused") {
    CHECK(tray_complaints("ask: {lip", "ask: {t: {default: 1, range: [0, 2], says: x}, lip") ==
          Complaints{"5:11: styles.T-1.ask.t: a name that is taken: found `t`, expected a new one"});
}

TEST_CASE("an unknown kind of machine is refused") {
    CHECK(tray_complaints("made_by: die-cutter", "made_by: die-cuter") ==
          Complaints{"4:14: styles.T-1.made_by: unknown kind of machine: found `die-cuter`, expected kinds with `or` "
                     "between them, such as `die-cutter`"});
}

TEST_CASE("an unknown face is refused") {
    CHECK(tray_complaints("cover: {top", "cover: {lid") ==
          Complaints{"22:13: styles.T-1.cover.lid: unknown key; expected one of `left`, `right`, `front`, `back`, "
                     "`bottom`, `top`"});
}

TEST_CASE("a name of a cell's size is unknown in the grid") {
    CHECK(tray_complaints("L + 2*t", "L + w") ==
          Complaints{"7:16: styles.T-1.along[2]: an unknown name: found `w` in `L + w`, expected one of L, B, H, t, "
                     "panel, depth, flap, joint, tab, slot, in, lip, h"});
}

TEST_CASE("a cut-out that is not counted knows no i") {
    CHECK(tray_complaints("count: 2, at: [30*i", "at: [30*i") ==
          Complaints{"19:28: styles.T-1.cells.base.holes[1].at[1]: an unknown name: found `i` in `30*i`, expected one "
                     "of L, B, H, t, panel, depth, flap, joint, tab, slot, in, lip, h, w, d"});
}

TEST_CASE("a shape of two corners is refused") {
    CHECK(tray_complaints("taper: [0, 5]", "shape: [[0, 0], [w, 0]]") ==
          Complaints{"18:32: styles.T-1.cells.e1.shape: no shape: found 2 corners, expected 3 to 60"});
}

TEST_CASE("a taper beside a shape is refused") {
    CHECK(tray_complaints("taper: [0, 5]", "taper: 2, shape: [[0, 0], [w, 0], [w, d]]") ==
          Complaints{
              "18:25: styles.T-1.cells.e1.taper: beside `shape`: expected one of them, since a shape has its sides"});
}

TEST_CASE("an inset of the cell that stays is refused") {
    CHECK(tray_complaints("base: {holes", "base: {inset: 2, holes") ==
          Complaints{"18:7: styles.T-1.cells: `base` stays and hangs on no crease: expected neither `depth` nor "
                     "`inset` nor `taper`"});
}

TEST_CASE("the name of the outline is taken") {
    CHECK(
        tray_complaints("T-1:", "outline:") ==
        Complaints{"2:3: styles.outline: a name that is taken: the request gives an outline itself, expected another"});
}

TEST_CASE("a cell that stands twice in cells is refused") {
    CHECK(tray_complaints("base: {holes", "e1: {inset: 2}\n      base: {holes") ==
          Complaints{"19:7: styles.T-1: a cell twice: found `e1`, expected it once"});
}

TEST_CASE("a cell joined to itself is refused") {
    CHECK(tray_complaints("cover:", "join: {e1: e1}\n    cover:") ==
          Complaints{"22:16: styles.T-1.join.e1: joined to itself: expected another cell"});
}

TEST_CASE("a ring of creases is refused") {
    const auto found = style_complaints(
        "styles:\n  P:\n    title: T\n    along: [L, 20]\n    across: [B, 20]\n    map:\n      - a | b\n      - -- --\n"
        "      - c | d\n    fold: [b c d]\n");
    REQUIRE(found.size() == 1);
    CHECK(found[0].find("9:13: styles.P.map: a ring of creases: `") == 0);
}

TEST_CASE("two kinds of border between the same cells are refused") {
    CHECK(
        style_complaints(
            "styles:\n  P:\n    title: T\n    along: [L, 20]\n    across: [B, 20]\n    map:\n      - a | b\n"
            "      - a / b\n    fold: [b]\n") ==
        Complaints{"8:13: styles.P.map: two kinds of border between `a` and `b`: expected one along the whole of it"});
}

TEST_CASE("styles that are like one another in a circle are refused") {
    CHECK(style_complaints("styles:\n  A: {like: B}\n  B: {like: C}\n  C: {like: A}\n") ==
          Complaints{"4:13: styles.C.like: a circle: `A` is like `C` in the end, expected one that is not"});
}

TEST_CASE("pieces that are like no piece, or over none, are refused") {
    CHECK(style_complaints("styles:\n  S:\n    title: T\n    pieces:\n      a: {like: z, along: [L], across: [B]}\n"
                           "      b: {along: [L], across: [B], over: y}\n") ==
          Complaints{"5:17: styles.S.pieces.a.like: unknown piece: found `z`, expected one that is there",
                     "6:42: styles.S.pieces.b.over: unknown piece: found `y`, expected one of this style"});
}

TEST_CASE("an error is reported once, even if other styles copy the faulty entry") {
    const auto found = style_complaints(tray_with("L + 2*t", "L + q") + "  T-2: {like: T-1}\n  T-3: {like: T-2}\n");
    REQUIRE(found.size() == 1);
    CHECK(found[0].find("7:16: styles.T-1.along[2]: an unknown name") == 0);
}

TEST_CASE("all errors of a styles file are reported together") {
    CHECK(
        style_complaints(tray_with("L + 2*t", "L*B") + "  X: {title: T, along: [L], across: [0], plane: 1}\n").size() ==
        3);
}

TEST_CASE("a styles file holds at most 500 styles, a map 40 columns, a style 8 pieces") {
    std::string many = "styles:\n", columns, pieces;
    for (int i = 0; i < 501; ++i) many += "  S" + std::to_string(i) + ": {title: T, along: [L], across: [B]}\n";
    for (int i = 0; i < 41; ++i) columns += i == 0 ? "L" : ", L";
    for (int i = 0; i < 9; ++i) pieces += "      p" + std::to_string(i) + ": {along: [L], across: [B]}\n";
    CHECK(style_complaints(many) == Complaints{"2:3: styles: too many styles: found 501, expected at most 500"});
    CHECK(style_complaints("styles:\n  A: {title: T, across: [B], along: [" + columns + "]}\n").back() ==
          "2:37: styles.A.along: too many: found 41, expected at most 40");
    CHECK(style_complaints("styles:\n  A:\n    title: T\n    pieces:\n" + pieces).front() ==
          "5:7: styles.A.pieces: too many pieces: found 9, expected at most 8");
}

TEST_CASE("a style lists at most 200 cut-outs a cell and 400 a blank") {
    const auto cell = [](const std::string& name, int count) {
        std::string text = "      " + name + ": {holes: [";
        for (int i = 0; i < count; ++i) text += std::string(i == 0 ? "" : ", ") + "{at: [1, 1], size: [1, 1]}";
        return text + "]}\n";
    };
    const std::string style =
        "styles:\n  A:\n    title: T\n    along: [L, L, L]\n    across: [B]\n    map: [a | b | c]\n    fold: [b, c]\n"
        "    cells:\n";
    CHECK(style_complaints(style + cell("a", 200) + cell("b", 200)).empty());
    CHECK(style_complaints(style + cell("a", 201)) ==
          Complaints{"9:18: styles.A.cells.a.holes: too many cut-outs: found 201, expected at most 200"});
    CHECK(style_complaints(style + cell("a", 200) + cell("b", 200) + cell("c", 1)) ==
          Complaints{"11:18: styles.A.cells.c.holes: too many cut-outs in one blank: found 401 up to here, expected at "
                     "most 400"});
}

TEST_CASE("entries that grow by taking over one another do not fill the memory") {
    std::string text = "styles:\n  S0:\n    title: T\n    along: [L]\n    across: [B]\n    ask:\n";
    for (int i = 0; i < 400; ++i) text += "      m" + std::to_string(i) + ": {default: 1, range: [0, 2], says: x}\n";
    for (int i = 1; i < 450; ++i) text += "  S" + std::to_string(i) + ": {like: S" + std::to_string(i - 1) + "}\n";
    const auto found = style_complaints(text);
    REQUIRE_FALSE(found.empty());
    CHECK(found[0].find("too much copied by `like`") != std::string::npos);
}
