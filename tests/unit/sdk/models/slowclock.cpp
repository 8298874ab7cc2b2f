// slowclock: every machine runs twice as long as it should. Replaces what the model `running` provides, and gets the
// value that it replaces.
#include <flutebook/plugin.hpp>
using namespace flutebook;

struct SlowClock : Model {
    Need<step> planned = need("run.hours", "min", "minutes that each machine should run");
    Provide<step> hours = provide("run.hours", "h", "hours that each machine runs");

    void evaluate(Frame& f) const {
        for (auto k : f.steps()) f.set(hours, k, f[planned][k] / 60 * 2);
    }
};
FLUTEBOOK_MODEL(SlowClock, "slowclock", "1.0.0", "Slow clock")
