// The table. Sums, signs, names, flaps, steps, joints, insides, covers, pieces, cut-outs.
#include "tests/unit/services/wrong_styles.hpp"

namespace flutebook::fixture {

namespace {

const std::vector<WrongStyle> table = {
    // ---- 0201: the map, the sums, the steps
    {"0201", "H + depth", "H", "the height lacks what its scores take"},
    {"0201", "H + depth", "H + 2*depth", "the height has twice what its scores take"},
    {"0201", "H + depth", "H - depth", "the height has its allowance with the wrong sign"},
    {"0201", "[B/2 + flap", "[L/2 + flap", "the upper flaps are half as deep as the box is long"},
    {"0201", "[B/2 + flap", "[B/3 + flap", "the upper flaps do not meet"},
    {"0201", "H + depth, B/2", "H + depth, B", "the lower flaps are twice as deep as they may be"},
    {"0201", "L + panel, B + panel, L + panel", "L + panel, L + panel, B + panel", "two panels are swapped"},
    {"0201", "B + panel - joint", "B/2 - joint", "the last panel is half as long"},
    {"0201", "tab, L + panel, B", "tab, L + 6*panel, B", "the first panel is longer than the third"},
    {"0201", "[tab, L", "[3*tab - L/2, L", "the tab has no length in a long box"},
    {"0201", "L + panel, B", "L + pannel, B", "an allowance has the wrong name"},
    {"0201", "[B/2 + flap", "[B*B/2 + flap", "a flap is an area"},
    {"0201", "[B/2 + flap", "[\"1,5 + flap\"", "a sum has two values"},
    {"0201", "[B/2 + flap", "[B/(L - L) + flap", "a sum divides by nothing"},
    {"0201", "g2 g4, g1 g3,", "g2 g4,", "a step is missing"},
    {"0201", "g2 g4, g1 g3,", "g2 g4, g1 -90 g3,", "a flap folds outwards"},
    {"0201", "tab p2 p3 p4,", "tab p2 p3 -90 p4,", "a panel folds outwards"},
    {"0201", "tab p2 p3 p4,", "tab p2 95 p3 p4,", "a panel folds by 95 degrees"},
    {"0201", "tab p2 p3 p4,", "tab 180 p2 p3 p4,", "the tab folds back on its own panel"},
    {"0201", "tab p2 p3 p4,", "tab p2 p3 p4 200,", "a panel folds by more than 180 degrees"},
    {"0201", "g2 g4, g1 g3,", "g2 g4 g1 g3,", "inner and outer flaps fold in one step"},
    {"0201", "f1 f3]", "f1 f3 f2]", "a flap folds twice"},
    {"0201", "join: {tab: p4}", "join: {tab: p3}", "the tab is glued on a panel across the box"},
    {"0201", "join: {tab: p4}", "join: {tab: p2}", "the tab is glued on the panel at the other end"},
    {"0201", "join: {tab: p4}", "join: {tab: p5}", "the tab is glued on a panel that is not there"},
    {"0201", "L: [p2, p4], B: [p1, p3]", "L: [p1, p3], B: [p2, p4]", "length and breadth are measured crosswise"},
    {"0201", "H: [g2, f2]", "H: [g2, p1]", "the height is measured to a wall"},
    {"0201", "top: 1}", "top: 0}", "a lid is said to be open"},
    {"0201", "tab | p1 | p2", "tab | p1 / p2", "a slot parts two panels"},
    {"0201", "- tab | p1 | p2 | p3 | p4", "- tab | p1 | p2 | p3", "a row of the map lacks a panel"},
    {"0201", "      - .     --   --   --   --\n      - tab", "      - .     --   --   --   .\n      - tab",
     "a flap hangs on no crease"},
    {"0201", "[tab p2 p3 p4, g2 g4, g1 g3, f2 f4, f1 f3]",
     "[tab -90 p2 -90 p3 -90 p4 -90, g2 -90 g4 -90, g1 -90 g3 -90, f2 -90 f4 -90, f1 -90 f3 -90]",
     "the box is turned inside out"},
    // ---- other slotted boxes
    {"0200", "top: 0", "top: 1", "an open box is said to be closed"},
    {"0200", "H + depth/2", "H - 2*depth", "a half box is too low"},
    {"0202", "[B/2 + flap + overlap/2", "[B/2 + flap - overlap/2", "flaps that should overlap leave a gap"},
    {"0203", "[B + flap - clear", "[B + flap + 20*clear", "outer flaps stand out of the box"},
    {"0203", "g1, g3, f2", "g1 g3, f2", "flaps that overlap fold in one step"},
    {"0204", "f1 f3 g1 g3: {depth: B/2", "f1 f3 g1 g3: {depth: L/2", "outer flaps are as deep as the inner ones"},
    {"0204", "f2 f4 g2 g4: {depth: L/2", "f2 f4 g2 g4: {depth: L", "inner flaps land on one another"},
    {"0205", "\"min(L/2, B) + flap\"", "L/2 + B", "outer flaps stand out of a long box"},
    {"0206", "g1, g3, f2", "g1 g3, f2", "outer flaps that cover all fold in one step"},
    {"0209", "open: (L + panel - 2*short)", "open: (L + panel - short)", "what short flaps leave open is wrong"},
    {"0209", "across: [short,", "across: [2*short,", "the upper flaps are deeper than the lower ones"},
    // ---- die-cut boxes
    {"0215", "h: H + 3*t", "h: H - t", "the height is too low by its layers"},
    {"0215", "b - t, h, 0.7*b", "b/2, h, 0.7*b", "the lid reaches over half of the box"},
    {"0215", "fold: [tab p2 p3 p4, g1, g2 g4, g3,", "fold: [tab p2 p3 p4, g1 g3, g2 g4,",
     "the flaps of the bottom fold in one step"},
    {"0215", "\"min(b/2, l/2) - 1\"", "l/2 + 15", "the ears of the lid land on one another"},
    {"0215", "taper: 8", "taper: L", "a taper eats its cell"},
    {"0215", "e2 e4, lid tuck]", "e2 e4, lid -90 tuck]", "the lid folds away from the box"},
    {"0404", "\"(L + t)/2\", range: [10, \"(L + t)/2\"]", "0.6*L, range: [10, L]", "inner flaps land on one another"},
    {"0409", "b - t, tuck]", "b/2, tuck]", "the lid reaches over half of the box"},
    {"0409", "p4 tuck,", "p4 tuck -90,", "the flap that tucks in folds outwards"},
    {"0421", "l: L + 5*t", "l: L + t", "the ends leave no room for what lies within them"},
    {"0421", "end: h - t", "end: h + 40", "the front and the ends stand above the lid"},
    {"0421", "b - t, h, b, end]", "b + 60, h, b, end]", "the lid reaches beyond the front"},
    {"0421", "{c1: e1, c2: e2,", "{c1: e2, c2: e1,", "corner tabs are joined to the other ends"},
    {"0426", "l: L + 5*t", "l: L + t", "the length forgets that the ends are double"},
    {"0426", "d1 d2: {depth: corner", "d1 d2: {depth: b", "corner tabs land on one another"},
    {"0426", "2*t, end, l", "0.2*t, end, l", "the rolled-over end has no room for its edge"},
    {"0426", "along:  [end - 1.5*t", "along:  [end + 20", "the inner end passes through the base"},
    {"0426", "{at: [1.5*t,", "{at: [-1.5*t,", "a slit leaves its cell"},
    {"0426", "lid tuck]", "lid tuck -90]", "the tuck flap turns up"},
    {"0427", "ear: \"min(end, 40)\"", "ear: end + 30", "the lid's ears pass through the base"},
    // ---- boxes of two parts
    {"0300", "room_l: 4*t", "room_l: 2*t", "the lid does not clear the corner tabs"},
    {"0300", "room_b: 2*t + 2*play", "room_b: play/2", "the lid has no room for the body's walls"},
    {"0300", "let: {l: L + 3*t, b: B + t", "let: {l: L, b: B + t", "the body forgets its corner tabs"},
    {"0300", "c1 c2: {depth: \"min(tab, h)\"", "c1 c2: {depth: b", "corner tabs reach over the whole end"},
    {"0300", "join: {c1: e1, c2: e2", "join: {c1: e2, c2: e1", "corner tabs are stitched to the wrong ends"},
    {"0300", "over: body", "over: base", "the lid goes over a piece that is not there"},
    {"0310", "count: 2", "count: L/3", "caps do not come in a whole number"},
    {"0310", "room: 2*t + 2*play", "room: play", "the caps have no room for the tube"},
    // ---- folders, sleeves, inserts
    {"0401", "[inner, h - t,", "[inner, h + 4*t,", "an end stands out of the lid"},
    {"0401", "[b/2, h, b", "[b/3, h, b", "the upper flaps do not meet"},
    {"0401", "[e1 e2, i1 i2, w1 w2, t1 t2]", "[e1 -90 e2 -90, i1 -90 i2 -90, w1 -90 w2 -90, t1 -90 t2 -90]",
     "the folder is turned inside out"},
    {"0410", "h: H + t", "h: H + 5*t", "the height is too large by four thicknesses"},
    {"0501", "[tab, B + panel, H + panel,", "[tab, H + panel, B + panel,", "a sleeve has two panels swapped"},
    {"0933", "size: [t + 1, h/2 + 1]", "size: [t + 1, 2*h]", "the slits of a strip part it"},
    // ---- what nobody can find
    {"0201", "B + panel - joint", "B + panel + joint", "the last panel reaches over the joint",
     "it stands a few millimetres out, which a proof must allow for layers"},
    {"0202", "[B/2 + flap + overlap/2", "[B/2 + flap + overlap/3", "flaps overlap less than was asked",
     "no key of a style says how far cells overlap"},
    {"0300", "fold: [w1 w2, c1 c2 c3 c4, e1 e2]", "fold: [w1 w2, e1 e2, c1 c2 c3 c4]",
     "corner tabs are folded after the ends", "the box folds so too, with the tabs outside"},
    {"0215", "[0.3*w, d - 0.2*b], [0.25*w, d]", "[0.3*w, d - 0.1*b], [0.25*w, d]",
     "the notch of the bottom flap is shallower on one side", "parts that interlock are not seen to collide"},
};

}  // namespace

const std::vector<WrongStyle>& wrong_styles() {
    return table;
}

}  // namespace flutebook::fixture
