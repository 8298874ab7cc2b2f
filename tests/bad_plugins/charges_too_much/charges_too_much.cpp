// Charges the unlucky order more than any amount may be.
#include <flutebook/plugin.hpp>

using namespace flutebook;

namespace {

struct Dear : Model {
    Need<order> quantity = need("order.quantity", "1", "boxes ordered");
    Line<step> gold = line("gold", "kg", material, per_unit, "Gold leaf");

    void evaluate(Frame& f) const {
        if (f[quantity] == 5000) f.charge(gold, f.dispatch(), 3e6, 3e4);
    }
};

}  // namespace
FLUTEBOOK_MODEL(Dear, "charges_too_much", "1.0.0", "Gold leaf")
