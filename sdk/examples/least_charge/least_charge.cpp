// least_charge: no order costs less than the plant's least; what is missing is charged to it.
//
//   charge = least - what all other models charge; nothing where they charge enough
//
// It needs `cost.all`, so it is a late model: it is evaluated after all models that need no cost, and `cost.all` holds
// their rounded lines. Source: common practice, no published source.
#include <flutebook/plugin.hpp>

using namespace flutebook;

namespace {

struct LeastCharge : Model {
    Need<step> cost = need("cost.all", "money", "what other models charge at each step", {-1e12, 1e12});
    Setting<by_plant> least = setting("least", "money", required, {0, 1e6}, "least cost of an order").usual({20, 2000});
    Line<order> missing = line("least_charge", "1", flutebook::system, per_run, "Least charge for an order");

    void evaluate(Frame& f) const {
        double charged = 0;
        for (auto k : f.steps()) charged += f[cost][k];
        if (charged < f[least]) f.charge(missing, 1, f[least] - charged);
    }
};

}  // namespace
FLUTEBOOK_MODEL(LeastCharge, "least_charge", "1.0.0", "A least charge for small orders")
