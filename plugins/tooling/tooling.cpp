// tooling: print plates and the die, written off evenly over the boxes that they are to make.
//
//   plates = quantity x colours x piece area x plate_share x plate_price / plate_boxes     at the step that prints
//   die    = quantity x (sheet area x die_board_price + ups x rule x rule_price) / die_boxes   at the die cutter
// The rule for one box is what of its blank is cut and creased, unless the request gives its length.
// Only the die of the step where blanks part from the sheet is this order's own. Tools for which the request names no
// number of boxes are invoiced apart: they cost this order nothing, and what they come to is provided as
// `plates.invoiced` and `die.invoiced`. Source: common practice, no published source; the usual ranges are from memory.
#include <flutebook/plugin.hpp>

using namespace flutebook;

namespace {

constexpr Range price{0, 1e9};
constexpr Range boxes{0, 1e9};

struct Tooling : Model {
    Need<order> quantity = need("order.quantity", "1", "boxes ordered");
    Need<order> cut = need("blank.cut", "m", "edges of the blank that are cut");
    Need<order> crease = need("blank.crease", "m", "creases of the blank");
    Need<order> ups = need("sheet.ups", "1", "boxes on one sheet");
    Need<order> parting = need("step.parting", "1", "step where boxes part from the sheet", {0, 1000});
    Need<step> kind = need("step.kind", "1", "kind of machine at each step", {0, 100});
    Need<step> colours = need("step.colours", "1", "colours printed at each step");
    Need<step> area = need("step.piece_area", "m2", "one piece at each step");

    Setting<by_plant> plate_price =
        setting("plate_price", "money/m2", 0, price, "print plate, mounted").usual({50, 2500});
    Setting<by_request> plate_share = setting("plate_share", "1", 1, {0, 1}, "share of the sheet that a plate covers");
    Setting<by_request> plate_boxes =
        setting("plate_boxes", "1", 0, boxes, "boxes that the plates are to make in all; 0: invoiced apart")
            .usual({0, 2e7});
    Setting<by_plant> die_board_price =
        setting("die_board_price", "money/m2", 0, price, "the die's base, by sheet area").usual({20, 1500});
    Setting<by_plant> rule_price =
        setting("rule_price", "money/m", 0, price, "cutting and creasing rule, fitted").usual({1, 60});
    Setting<by_request> rule_length =
        setting("rule_length", "m", 0, {0, 1000}, "rule for one box; 0: what its blank is cut and creased")
            .usual({0, 150});
    Setting<by_request> die_boxes =
        setting("die_boxes", "1", 0, boxes, "boxes that the die is to make in all; 0: invoiced apart").usual({0, 2e7});

    Provide<order> plates_apart = provide("plates.invoiced", "money", "print plates, invoiced apart");
    Provide<order> die_apart = provide("die.invoiced", "money", "die, invoiced apart");

    Line<step> plates = line("plates", "box", system, per_unit, "Print plates, written off");
    Line<step> die = line("die", "box", system, per_unit, "Die, written off");

    // A tool's cost by the box; nothing where it is invoiced apart.
    static double by_box(double cost, double result) { return result > 0 ? cost / result : 0; }

    void evaluate(Frame& f) const {
        const double plate = by_box(f[plate_share] * f[plate_price], f[plate_boxes]);
        const double rule_of_box = f[rule_length] > 0 ? f[rule_length] : f[cut] + f[crease];
        const double rule = f[ups] * rule_of_box * f[rule_price];
        double plates_cost = 0, die_cost = 0;
        for (auto k : f.converters()) {
            const bool has_die = k.number() == f[parting] && f[kind][k] == die_cutter_kind;
            const double die_of_order = has_die ? f[area][k] * f[die_board_price] + rule : 0;
            f.charge(plates, k, f[colours][k] > 0 ? f[quantity] : 0, f[colours][k] * f[area][k] * plate);
            f.charge(die, k, has_die ? f[quantity] : 0, by_box(die_of_order, f[die_boxes]));
            plates_cost += f[colours][k] * f[area][k] * f[plate_share] * f[plate_price];
            die_cost += die_of_order;
        }
        f.set(plates_apart, f[plate_boxes] > 0 ? 0 : plates_cost);
        f.set(die_apart, f[die_boxes] > 0 ? 0 : die_cost);
    }
};

}  // namespace
FLUTEBOOK_MODEL(Tooling, "tooling", "1.0.0", "Print plates and dies")
