// small_orders: a machine wastes more at the start of a run, while its crew adjusts it, so small orders lose a larger
// share than large ones. This model replaces the constant share of the machine's file:
//
//   prefer: {step.run_waste: small_orders}
//
//   run waste[k] = the machine's share x factor
//   factor = at_small up to `small` boxes, at_large from `large` boxes on, a straight line between
// Source: a rule of thumb, no published source; a plant calculates its factors from its own orders.
#include <flutebook/plugin.hpp>

using namespace flutebook;

namespace {

constexpr Range boxes{1, 1e7};
constexpr Range factor_range{0, 20};
constexpr double most_waste = 0.95;

struct SmallOrders : Model {
    Need<order> quantity = need("order.quantity", "1", "boxes ordered", boxes);
    Need<step> flat = need("step.run_waste", "1", "the machine's own share", {0, 1});
    Setting<by_plant> small = setting("small", "1", 1000, boxes, "boxes; an order up to here is a small one");
    Setting<by_plant> large = setting("large", "1", 20000, boxes, "boxes; an order from here on is a large one");
    Setting<by_plant> at_small = setting("at_small", "1", 1.5, factor_range, "times the machine's share, small orders");
    Setting<by_plant> at_large = setting("at_large", "1", 1, factor_range, "times the machine's share, large orders");
    Provide<step> waste = provide("step.run_waste", "1", "share lost while running, by size of order", {0, most_waste});
    Reason upside_down = reason("small lies above large");
    Reason wasteful = reason("the house rule for waste leaves next to no good pieces");

    double factor(const Frame& f) const {
        if (f[quantity] <= f[small]) return f[at_small];
        if (f[quantity] >= f[large]) return f[at_large];
        return f[at_small] + (f[at_large] - f[at_small]) * (f[quantity] - f[small]) / (f[large] - f[small]);
    }

    void evaluate(Frame& f) const {
        if (f[small] > f[large]) f.refuse(upside_down);
        for (auto k : f.steps()) {
            const double share = f[flat][k] * factor(f);
            if (share > most_waste) f.refuse(wasteful);
            f.set(waste, k, share > most_waste ? most_waste : share);
        }
    }
};

}  // namespace
FLUTEBOOK_MODEL(SmallOrders, "small_orders", "1.0.0", "Run waste by size of order")
