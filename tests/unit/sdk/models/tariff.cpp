// tariff: a price of power of its own, for short and for long runs. Replaces the setting energy.power_price, and asks
// for nothing that the plant would have to give.
#include <flutebook/plugin.hpp>
using namespace flutebook;

struct Tariff : Model {
    Need<order> web_length = need("web.length", "m", "board combined, by length");
    Provide<order> price = provide("energy.power_price", "money/kWh", "power, by the length of the run");

    void evaluate(Frame& f) const { f.set(price, f[web_length] < 1000 ? 0.25 : 0.125); }
};
FLUTEBOOK_MODEL(Tariff, "tariff", "1.0.0", "Power by the length of the run")
