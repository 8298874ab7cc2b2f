// hand_packing: boxes that are packed by hand, at a rate that falls with the size of the order.
//
//   charge = boxes x rate, where the request asks for it
//
// The rate has breakpoints. Its plant writes them as steps over the boxes ordered:
//
//   - hand_packing: {rate: {1: 0.05, 1000: 0.035, 10000: 0.02}}
//
// and the model gets the one that counts for this order. Source: common practice, no published source.
#include <flutebook/plugin.hpp>

using namespace flutebook;

namespace {

constexpr const char* no_or_yes[] = {"no", "yes"};

struct HandPacking : Model {
    Need<order> quantity = need("order.quantity", "1", "boxes ordered", {1, 1e7});
    Setting<by_request> packed = choice("packed", no_or_yes, 0, "whether the boxes are packed by hand");
    Setting<by_plant> rate =
        setting("rate", "money", required, {0, 100}, "packing one box").usual({0.005, 1}).stepped_over(quantity);
    Line<order> packing = line("hand_packing", "1", flutebook::system, per_unit, "Packing by hand");

    void evaluate(Frame& f) const { f.charge(packing, f[packed] * f[quantity], f[rate]); }
};

}  // namespace
FLUTEBOOK_MODEL(HandPacking, "hand_packing", "1.0.0", "Packing by hand")
