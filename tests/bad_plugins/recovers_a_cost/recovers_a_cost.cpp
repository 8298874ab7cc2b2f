// Takes money for the unlucky order's scrap under the class of income.
#include <flutebook/plugin.hpp>

using namespace flutebook;

namespace {

struct Toll : Model {
    Need<order> quantity = need("order.quantity", "1", "boxes ordered");
    Line<step> toll = line("toll", "kg", recovery, per_unit, "Toll for scrap");

    void evaluate(Frame& f) const {
        if (f[quantity] == 5000) f.charge(toll, f.dispatch(), 3, 2);
    }
};

}  // namespace
FLUTEBOOK_MODEL(Toll, "recovers_a_cost", "1.0.0", "Toll for scrap")
