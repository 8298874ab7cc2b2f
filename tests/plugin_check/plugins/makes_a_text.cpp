// Creates a string of the standard library in every row.
#include <flutebook/plugin.hpp>
#include <string>

using namespace flutebook;

namespace {

struct MakesAText : Model {
    Need<order> boxes = need("order.quantity", "1", "boxes ordered");
    Line<step> counted = line("boxes", "1", system, per_unit, "Boxes counted");

    void evaluate(Frame& f) const {
        const std::string text = std::to_string(f[boxes]) + " boxes, counted one after the other";
        f.charge(counted, corrugator, f[boxes], static_cast<double>(text.size()));
    }
};

}  // namespace
FLUTEBOOK_MODEL(MakesAText, "makes_a_text", "1.0.0", "Boxes counted in words")
