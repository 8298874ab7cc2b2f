// Takes the giver's number, but only up to 1. To refuse the row for a reason would be the better way.
#include <flutebook/plugin.hpp>

using namespace flutebook;

namespace {

struct Taker : Model {
    Need<order> number = need("own.number", "1", "a number of another model", {0, 1});

    void evaluate(Frame&) const {}
};

}  // namespace
FLUTEBOOK_MODEL(Taker, "taker", "1.0.0", "Takes a number")
