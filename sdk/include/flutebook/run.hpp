// flutebook/run.hpp: the arithmetic of a run, written once.
//
// From the quantity ordered back to the metres of web that the corrugator must run, and the mass lost on the way.
// The model `run` evaluates it for a quote, the month's review runs it forward from what was really made, and a
// plant's own model may replace a part. Plain functions: lengths in m, areas in m2, mass in kg, grammage in g/m2,
// shares of what is fed. Pieces are sheets up to and including the parting step (the first die cutter, else the
// last converter), boxes after it; a sheet holds `ups` boxes.
#pragma once

#include <cmath>

namespace flutebook::run {

/// Whole pieces at least `x`. A hair over a whole number counts as that number: 990 / 0.99 is 1000 sheets, not 1001.
/// Adding nothing makes of -0, what is left of a hair, a plain 0.
inline double whole_up(double x) {
    return std::ceil(x - 1e-9) + 0.0;
}

/// Whole pieces at most `x`, with the same hair.
inline double whole_down(double x) {
    return std::floor(x + 1e-9);
}

/// Pieces to feed a converter so that `good` come out: `waste` is the share of what is fed after the setup sheets.
inline double fed(double good, double waste, double setup_sheets) {
    return whole_up(good / (1 - waste)) + setup_sheets;
}

/// Sheets that hold `boxes`.
inline double sheets_for(double boxes, double ups) {
    return whole_up(boxes / ups);
}

/// Rows of sheets off the knife, `outs` side by side.
inline double cuts(double good_sheets, double outs) {
    return whole_up(good_sheets / outs);
}

/// Web to run for `good_length` of good board: the corrugator's run waste, then the order change.
inline double web_length(double good_length, double waste, double order_change) {
    return good_length / (1 - waste) + order_change;
}

/// One ply's paper issued for a web: `area` is web length x roll width, `roll_loss` the share stripped, left on the
/// core or on the roll's end.
inline double paper_issued(double area, double grammage, double take_up, double roll_loss) {
    return area * grammage * take_up / 1000 / (1 - roll_loss);
}

/// Mass of board of a grammage.
inline double mass(double area, double grammage) {
    return area * grammage / 1000;
}

/// What the corrugator loses, by cause, in m2 of board (roll ends are paper, by mass: issued x roll_loss).
struct WebLoss {
    double side_trim, order_change, run_waste, surplus;
};

/// The roll width, the width that the sheets side by side take (outs x slit), and what was cut of it. `share` is the
/// part of the web that the order pays: 1 where it pays its own roll alone.
struct WebCut {
    double roll_width, used_width, outs, chop, sheet_area;
    double share = 1;
};

/// Web that the order pays for `good_sheets`, before run waste and order change.
inline double good_length(const WebCut& cut, double good_sheets) {
    return cut.share * (cuts(good_sheets, cut.outs) * cut.chop);
}

/// Of `length` of web that the order pays, the order change among it. Where it pays a share, what it pays is trimmed as
/// much as webs are on average: roll_width - used_width / share wide.
inline WebLoss web_loss(const WebCut& cut, double length, double order_change, double good_sheets) {
    const double rows = cuts(good_sheets, cut.outs);
    const double used = cut.used_width / cut.share;
    return {length * (cut.roll_width - used), order_change * used,
            (length - order_change - good_length(cut, good_sheets)) * used,
            (rows * cut.outs - good_sheets) * cut.sheet_area};
}

}  // namespace flutebook::run
