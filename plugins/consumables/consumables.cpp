// consumables: ink, the maker's joint, and the straps around bundles.
//
//   ink[k]     = pieces fed x piece area x colours printed there x coverage x ink_laydown
//   joint      = for each piece fed, over the length of the joint, at the route's last folder-gluer, stitcher or hand,
//                else at its last converter:
//                glue    length x glue_laydown                       kg
//                stitch  (whole gaps of stitch_spacing + 1) x stitch_wire   kg: a stitch at either end
//                tape    length                                      m
//   strapping  = ceil(quantity / bundle_boxes) x strap_length        m, at dispatch
// Setup pieces and rejects take ink and glue like good ones: these go by what is fed. Nothing is charged until the
// plant gives laydowns, wire, lengths and prices: all are 0 unless it does. A stitch at most every 50 mm is from
// memory; the rest, the usual ranges among it, is common practice, no published source.
#include <flutebook/plugin.hpp>
#include <flutebook/run.hpp>

#include <algorithm>

using namespace flutebook;

namespace {

constexpr const char* joints[] = {"glue", "stitch", "tape"};
constexpr double glued = 0, stitched = 1, taped = 2;  // as `joint` hands them over

constexpr Range price{0, 1e6};
constexpr double grams_per_kg = 1000;
constexpr double mm_per_m = 1000;

struct Consumables : Model {
    Need<order> quantity = need("order.quantity", "1", "boxes ordered");
    Need<order> box_joint = need("box.joint", "m", "length of the maker's joint");
    Need<step> fed = need("run.fed", "1", "pieces fed to each step");
    Need<step> area = need("step.piece_area", "m2", "one piece at each step");
    Need<step> colours = need("step.colours", "1", "colours printed at each step");
    Need<step> kind = need("step.kind", "1", "kind of machine at each step", {0, 100});

    Setting<by_request> coverage = setting("coverage", "1", 0, {0, 1}, "share of the sheet that each colour covers");
    Setting<by_plant> ink_laydown =
        setting("ink_laydown", "g/m2", 0, {0, 100}, "ink on a covered m2, one colour").usual({0, 30});
    Setting<by_plant> ink_price =
        setting("ink_price", "money/kg", 0, price, "ink, as it is laid down").usual({0.5, 60});
    Setting<by_request> joint = choice("joint", joints, 0, "how the maker's joint is closed");
    Setting<by_request> joint_length =
        setting("joint_length", "mm", 0, {0, 10000}, "joint of a box made to a drawing, beside the style's own")
            .usual({0, 3000});
    Setting<by_plant> glue_laydown =
        setting("glue_laydown", "g/m", 0, {0, 1000}, "wet glue along a metre of joint").usual({0.3, 24});
    Setting<by_plant> glue_price = setting("glue_price", "money/kg", 0, price, "joint glue, wet").usual({0.3, 20});
    Setting<by_plant> stitch_spacing =
        setting("stitch_spacing", "mm", 50, {1, 10000}, "most between two stitches").usual({15, 150});
    Setting<by_plant> stitch_wire = setting("stitch_wire", "g", 0, {0, 100}, "wire in one stitch").usual({0.05, 5});
    Setting<by_plant> wire_price = setting("wire_price", "money/kg", 0, price, "stitching wire").usual({0.5, 15});
    Setting<by_plant> tape_price = setting("tape_price", "money/m", 0, price, "joint tape").usual({0.004, 0.3});
    Setting<by_plant> bundle_boxes =
        setting("bundle_boxes", "1", 0, {0, 1e6}, "boxes in a bundle; 0: not strapped").usual({0, 200});
    Setting<by_plant> strap_length =
        setting("strap_length", "m", 0, {0, 1000}, "strap around one bundle, all straps").usual({0.5, 20});
    Setting<by_plant> strap_price = setting("strap_price", "money/m", 0, price, "strap").usual({0.001, 0.2});

    Line<step> ink = line("ink", "kg", material, per_unit, "Ink");
    Line<step> glue = line("joint.glue", "kg", material, per_unit, "Joint glue");
    Line<step> stitch = line("joint.stitch", "kg", material, per_unit, "Stitching wire");
    Line<step> tape = line("joint.tape", "m", material, per_unit, "Joint tape");
    Line<step> strapping = line("strapping", "m", material, per_unit, "Strapping");

    // What the joint of one piece takes, in the one way asked for.
    struct Closed {
        double glue, wire, tape;  // kg, kg, m
    };
    Closed close(const Frame& f) const {
        const double length = f[box_joint] + f[joint_length] / mm_per_m;
        const double stitches = length > 0 ? run::whole_up(length * mm_per_m / f[stitch_spacing]) + 1 : 0;
        return {f[joint] == glued ? length * f[glue_laydown] / grams_per_kg : 0,
                f[joint] == stitched ? stitches * f[stitch_wire] / grams_per_kg : 0, f[joint] == taped ? length : 0};
    }

    // Whether a machine of that kind can join a box.
    static bool joins(double machine) {
        return machine == folder_gluer_kind || machine == stitcher_kind || machine == hand_kind;
    }
    // The number of the step that closes the joint; 0 where there is no converter.
    std::size_t joining_step(const Frame& f) const {
        std::size_t joining = 0, last = 0;
        for (auto k : f.converters()) {
            last = k.number();
            if (joins(f[kind][k])) joining = last;
        }
        return joining > 0 ? joining : last;
    }

    void evaluate(Frame& f) const {
        const double ink_per_area = f[coverage] * f[ink_laydown] / grams_per_kg;
        const Closed one = close(f);
        const std::size_t joining = joining_step(f);
        for (auto k : f.converters()) {
            const double joined = k.number() == joining ? f[fed][k] : 0;
            f.charge(ink, k, f[fed][k] * f[area][k] * f[colours][k] * ink_per_area, f[ink_price]);
            f.charge(glue, k, joined * one.glue, f[glue_price]);
            f.charge(stitch, k, joined * one.wire, f[wire_price]);
            f.charge(tape, k, joined * one.tape, f[tape_price]);
        }
        const double bundles = run::whole_up(f[quantity] / std::max(f[bundle_boxes], 1.0));
        f.charge(strapping, f.dispatch(), f[bundle_boxes] > 0 ? bundles * f[strap_length] : 0, f[strap_price]);
    }
};

}  // namespace
FLUTEBOOK_MODEL(Consumables, "consumables", "1.0.0", "Ink, joint and strapping")
