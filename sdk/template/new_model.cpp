// new_model: what one piece takes of something that is bought by the kilogram, machine by machine.
//
//   new_model[k] = pieces fed to step k x g a piece / 1000 x price
// Say here what the model reckons and where its formula and figures come from.
#include <flutebook/plugin.hpp>

using namespace flutebook;

namespace {

constexpr double grams_per_kg = 1000;

struct NewModel : Model {
    Need<step> fed = need("run.fed", "1", "pieces fed to each step");
    Setting<by_machine> use = setting("use", "g", 0, {0, 1000}, "what one piece takes; 0 where it takes none");
    Setting<by_plant> price = setting("price", "money/kg", required, {0, 1000}, "what is used, delivered");
    Line<step> used = line("new_model", "kg", material, per_unit, "new_model");

    // One order. No state, no allocation, no clock: the same numbers in give the same numbers out.
    void evaluate(Frame& f) const {
        for (auto k : f.converters()) f.charge(used, k, f[use][k] / grams_per_kg * f[fed][k], f[price]);
    }
};

}  // namespace
FLUTEBOOK_MODEL(NewModel, "new_model", "0.1.0", "new_model")
