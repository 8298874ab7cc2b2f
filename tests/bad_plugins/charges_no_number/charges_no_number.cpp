// Charges the unlucky order a quantity that is no number.
#include <flutebook/plugin.hpp>

#include <limits>

using namespace flutebook;

namespace {

struct NoNumber : Model {
    Need<order> quantity = need("order.quantity", "1", "boxes ordered");
    Line<step> ink = line("ink", "kg", material, per_unit, "Ink");

    void evaluate(Frame& f) const {
        if (f[quantity] == 5000) f.charge(ink, corrugator, std::numeric_limits<double>::quiet_NaN(), 2);
    }
};

}  // namespace
FLUTEBOOK_MODEL(NoNumber, "charges_no_number", "1.0.0", "Ink")
