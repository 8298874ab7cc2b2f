// Gives a name that begins as facts begin: a later host may have a fact of this name.
#include <flutebook/plugin.hpp>

using namespace flutebook;

namespace {

struct Meter : Model {
    Provide<step> heat = provide("step.heat", "kW", "heat of each machine");

    void evaluate(Frame& f) const {
        for (auto k : f.steps()) f.set(heat, k, 1);
    }
};

}  // namespace
FLUTEBOOK_MODEL(Meter, "takes_the_hosts_word", "1.0.0", "Heat of machines", "A. Example", "a@example.org")
