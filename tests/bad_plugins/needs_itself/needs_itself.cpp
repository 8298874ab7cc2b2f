// Needs what it is about to give.
#include <flutebook/plugin.hpp>

using namespace flutebook;

namespace {

struct Circle : Model {
    Need<order> before = need("own.number", "1", "its own number");
    Provide<order> after = provide("own.number", "1", "its own number");

    void evaluate(Frame& f) const { f.set(after, f[before]); }
};

}  // namespace
FLUTEBOOK_MODEL(Circle, "needs_itself", "1.0.0", "A circle of one")
