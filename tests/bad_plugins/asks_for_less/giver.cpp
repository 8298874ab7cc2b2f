// Gives 1, and 2 for the unlucky order, as it promises: anything from 0 to 10.
#include <flutebook/plugin.hpp>

using namespace flutebook;

namespace {

struct Giver : Model {
    Need<order> quantity = need("order.quantity", "1", "boxes ordered");
    Provide<order> number = provide("own.number", "1", "a number of its own", {0, 10});

    void evaluate(Frame& f) const { f.set(number, f[quantity] == 5000 ? 2 : 1); }
};

}  // namespace
FLUTEBOOK_MODEL(Giver, "giver", "1.0.0", "Gives a number")
