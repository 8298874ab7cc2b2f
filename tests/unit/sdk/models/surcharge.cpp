// surcharge: half as much again on the plant's own price of power. Replaces the setting energy.power_price, and builds
// on the value that the plant gives it.
#include <flutebook/plugin.hpp>
using namespace flutebook;

struct Surcharge : Model {
    Need<order> from_file = need("energy.power_price", "money/kWh", "power, as the plant's file says");
    Provide<order> price = provide("energy.power_price", "money/kWh", "power, with the surcharge");

    void evaluate(Frame& f) const { f.set(price, f[from_file] * 1.5); }
};
FLUTEBOOK_MODEL(Surcharge, "surcharge", "1.0.0", "Surcharge on power")
