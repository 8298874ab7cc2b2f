// Nothing wrong here: ways to make the unlucky order that leave more than 200 mm of trim are refused, for a reason
// that is declared.
#include <flutebook/plugin.hpp>

using namespace flutebook;

namespace {

struct Picky : Model {
    Need<order> quantity = need("order.quantity", "1", "boxes ordered");
    Need<order> trim = need("web.trim", "mm", "slit off both edges of the web");
    Reason too_much_trim = reason("more than 200 mm of trim");

    void evaluate(Frame& f) const {
        if (f[quantity] == 5000 && f[trim] > 200) f.refuse(too_much_trim);
    }
};

}  // namespace
FLUTEBOOK_MODEL(Picky, "refuses_a_row", "1.0.0", "Refuses wide trim")
