// haulage: 1500 kg at the plant's price a tonne, charged once for the order.
#include <flutebook/plugin.hpp>
using namespace flutebook;

struct Haulage : Model {
    Setting<by_plant> price = setting("price", "money/t", 40, {0, 1000}, "haulage, by the tonne");
    Line<order> haul = line("haulage", "kg", flutebook::system, per_run, "Haulage").rate_unit("money/t");

    void evaluate(Frame& f) const { f.charge(haul, 1500, f[price]); }
};
FLUTEBOOK_MODEL(Haulage, "haulage", "1.0.0", "Haulage by the tonne")
