// Gives the waste of the run from what the run costs.
#include <flutebook/plugin.hpp>

using namespace flutebook;

namespace {

struct LateRun : Model {
    Need<step> cost = need("cost.all", "money", "what was charged before", {-1e12, 1e12});
    Provide<step> waste = provide("step.run_waste", "1", "share lost while running", {0, 1});

    void evaluate(Frame& f) const {
        for (auto k : f.steps()) f.set(waste, k, f[cost][k] > 1000 ? 0.01 : 0.02);
    }
};

}  // namespace
FLUTEBOOK_MODEL(LateRun, "late_run", "1.0.0", "Waste by cost")
