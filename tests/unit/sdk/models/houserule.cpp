// houserule: a die cutter of this house loses more than its file says. Replaces step.run_waste, and builds on the
// value that it replaces.
#include <flutebook/plugin.hpp>
using namespace flutebook;

constexpr double die_cutter = die_cutter_kind;

struct HouseRule : Model {
    Need<step> kind = need("step.kind", "1", "what each machine is");
    Need<step> from_file = need("step.run_waste", "1", "share lost while running, as the machine's file says");
    Setting<by_plant> more = setting("more", "1", 0.01, {0, 0.5}, "share that a die cutter loses on top");
    Provide<step> waste = provide("step.run_waste", "1", "share lost while running", {0, 0.99});

    void evaluate(Frame& f) const {
        for (auto k : f.steps()) f.set(waste, k, f[from_file][k] + (f[kind][k] == die_cutter ? f[more] : 0));
    }
};
FLUTEBOOK_MODEL(HouseRule, "houserule", "1.0.0", "House rule for die-cut waste")
