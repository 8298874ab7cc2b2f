// Sheds losses beside the model that lays out the run.
#include <flutebook/plugin.hpp>

using namespace flutebook;

namespace {

struct Spill : Model {
    Loss spill = loss("spill", "Spilt on the way");

    void evaluate(Frame& f) const { f.shed(spill, corrugator, 1); }
};

}  // namespace
FLUTEBOOK_MODEL(Spill, "second_shedder", "1.0.0", "Spills")
