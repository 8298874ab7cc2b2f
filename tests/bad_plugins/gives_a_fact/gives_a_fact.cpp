// Gives what is the host's own to give.
#include <flutebook/plugin.hpp>

using namespace flutebook;

namespace {

struct Measure : Model {
    Provide<order> area = provide("box.area", "m2", "board in one box");

    void evaluate(Frame& f) const { f.set(area, 1); }
};

}  // namespace
FLUTEBOOK_MODEL(Measure, "gives_a_fact", "1.0.0", "A measure of its own")
