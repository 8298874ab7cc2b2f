// Needs the web in a unit that nobody knows.
#include <flutebook/plugin.hpp>

using namespace flutebook;

namespace {

struct Furrows : Model {
    Need<order> length = need("web.length", "furrow", "board combined, by length");

    void evaluate(Frame&) const {}
};

}  // namespace
FLUTEBOOK_MODEL(Furrows, "unknown_unit", "1.0.0", "Furrows")
