// Throws for the unlucky order; the SDK's loop catches it at the border.
#include <flutebook/plugin.hpp>

#include <stdexcept>

using namespace flutebook;

namespace {

struct Throws : Model {
    Need<order> quantity = need("order.quantity", "1", "boxes ordered");

    void evaluate(Frame& f) const {
        if (f[quantity] == 5000) throw std::runtime_error("a run of bad luck");
    }
};

}  // namespace
FLUTEBOOK_MODEL(Throws, "throws", "1.0.0", "Throws")
