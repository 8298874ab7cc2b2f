// Gives the hours that the model `running` gives already.
#include <flutebook/plugin.hpp>

using namespace flutebook;

namespace {

struct SecondClock : Model {
    Provide<step> hours = provide("run.hours", "h", "hours that each machine runs");

    void evaluate(Frame& f) const {
        for (auto k : f.steps()) f.set(hours, k, 1);
    }
};

}  // namespace
FLUTEBOOK_MODEL(SecondClock, "double_provider", "1.0.0", "A second clock")
