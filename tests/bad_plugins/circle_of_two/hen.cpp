// A hen needs an egg.
#include <flutebook/plugin.hpp>

using namespace flutebook;

namespace {

struct Hen : Model {
    Need<order> egg = need("yard.egg", "1", "eggs laid");
    Provide<order> hen = provide("yard.hen", "1", "hens hatched");

    void evaluate(Frame& f) const { f.set(hen, f[egg]); }
};

}  // namespace
FLUTEBOOK_MODEL(Hen, "hen", "1.0.0", "Hens")
