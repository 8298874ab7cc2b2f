// handles: a plant's own model, for tests of what a price leaves out. A request may ask for handles, of which no box
// takes more than four; the punching of their holes is charged by the second model of the two, `holes`, from what the
// first provides.
#include <flutebook/plugin.hpp>

using namespace flutebook;

namespace {

#ifdef HOLES
struct Holes : Model {
    Need<order> handles = need("handles.count", "1", "handles of all boxes");
    Setting<by_plant> price = setting("price", "money", 0.01, {0, 10}, "punching one hole");
    Line<order> punching = line("punching", "1", system, per_unit, "Punching");

    void evaluate(Frame& f) const { f.charge(punching, 2 * f[handles], f[price]); }
};
#else
struct Handles : Model {
    Need<order> quantity = need("order.quantity", "1", "boxes ordered");
    Setting<by_request> asked = setting("to_a_box", "1", 0, {0, 100}, "handles of one box");
    Setting<by_plant> price = setting("price", "money", 0.05, {0, 10}, "one handle");
    Provide<order> count = provide("handles.count", "1", "handles of all boxes");
    Line<order> handle = line("handle", "box", material, per_unit, "Handles");
    Reason too_many = reason("no box takes more than four handles");

    void evaluate(Frame& f) const {
        if (f[asked] > 4) f.refuse(too_many);
        f.set(count, f[quantity] * f[asked]);
        f.charge(handle, f[quantity] * f[asked], f[price]);
    }
};
#endif

}  // namespace
#ifdef HOLES
FLUTEBOOK_MODEL(Holes, "holes", "1.0.0", "Holes for handles")
#else
FLUTEBOOK_MODEL(Handles, "handles", "1.0.0", "Handles")
#endif
