// A rule for waste that looks at what is made from the very waste it replaces.
#include <flutebook/plugin.hpp>

using namespace flutebook;

namespace {

struct Rule : Model {
    Need<step> fed = need("run.fed", "1", "pieces fed to each step");
    Provide<step> waste = provide("step.run_waste", "1", "share lost while running", {0, 0.5});

    void evaluate(Frame& f) const {
        for (auto k : f.steps()) f.set(waste, k, f[fed][k] > 1000 ? 0.01 : 0.02);
    }
};

}  // namespace
FLUTEBOOK_MODEL(Rule, "rule_in_a_circle", "1.0.0", "Waste by run length")
