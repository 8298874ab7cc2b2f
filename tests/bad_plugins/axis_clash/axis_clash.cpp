// Takes what stands by ply as one number of the order.
#include <flutebook/plugin.hpp>

using namespace flutebook;

namespace {

struct Whole : Model {
    Need<order> paper = need("paper.issued", "kg", "paper issued for the order");

    void evaluate(Frame&) const {}
};

}  // namespace
FLUTEBOOK_MODEL(Whole, "axis_clash", "1.0.0", "Paper of the order")
