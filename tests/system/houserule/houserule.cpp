// houserule: a plant's own rule, for tests of what people are told: it adds a hundredth to the run waste of every
// machine, cannot make quantities of seven, and has a slip that shows at quantities of thirteen. Its next version,
// built from the same source, adds two hundredths.
#include <flutebook/plugin.hpp>

using namespace flutebook;

namespace {

#ifdef NEXT_HOUSERULE
constexpr double more_waste = 0.02;
#define HOUSERULE_VERSION "2.2.0"
#else
constexpr double more_waste = 0.01;
#define HOUSERULE_VERSION "2.1.0"
#endif

struct HouseRule : Model {
    Need<order> quantity = need("order.quantity", "1", "boxes ordered");
    Need<step> usual = need("step.run_waste", "1", "share lost of what is fed after the setup sheets", {0, 0.9});
    Provide<step> waste = provide("step.run_waste", "1", "share lost, with the rule of the house", {0, 0.95});
    Reason unlucky = reason("nobody here makes seven");

    void evaluate(Frame& f) const {
        if (f[quantity] == 7) f.refuse(unlucky);
        for (auto k : f.steps())
            if (f[quantity] != 13) f.set(waste, k, f[usual][k] + more_waste);
    }
};

}  // namespace
FLUTEBOOK_MODEL(HouseRule, "houserule", HOUSERULE_VERSION, "More waste than the machines say")
