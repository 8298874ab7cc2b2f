// An egg needs a hen.
#include <flutebook/plugin.hpp>

using namespace flutebook;

namespace {

struct Egg : Model {
    Need<order> hen = need("yard.hen", "1", "hens hatched");
    Provide<order> egg = provide("yard.egg", "1", "eggs laid");

    void evaluate(Frame& f) const { f.set(egg, f[hen]); }
};

}  // namespace
FLUTEBOOK_MODEL(Egg, "egg", "1.0.0", "Eggs")
