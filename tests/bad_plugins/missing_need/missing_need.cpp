// Needs a name that nobody gives, a letter away from one that the model `run` gives.
#include <flutebook/plugin.hpp>

using namespace flutebook;

namespace {

struct Misspelt : Model {
    Need<step> fed = need("run.fedd", "1", "pieces fed to each step");

    void evaluate(Frame&) const {}
};

}  // namespace
FLUTEBOOK_MODEL(Misspelt, "missing_need", "1.0.0", "Misspelt")
