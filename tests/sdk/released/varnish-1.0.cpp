// The example varnish as it was when 1.0 was released: varnish-1.0.so was built from it, and both stay as they are.
// varnish: wet varnish by the coat, on whichever machines varnish.
//
//   varnish[k] = coats x g/m2 a coat / 1000 x area of a piece x pieces fed to step k      kg
// Source: common practice, no published source.
#include <flutebook/plugin.hpp>

using namespace flutebook;

namespace {

constexpr double grams_per_kg = 1000;

struct Varnish : Model {
    Need<step> fed = need("run.fed", "1", "pieces fed to each step");
    Need<step> area = need("step.piece_area", "m2", "area of one piece at each step");
    Setting<by_request> coats = setting("coats", "1", 0, {0, 3}, "varnish coats on the outside");
    Setting<by_machine> laydown = setting("laydown", "g/m2", 0, {0, 40}, "wet varnish a coat; 0 where none is laid");
    Setting<by_plant> price = setting("price", "money/kg", required, {0, 100}, "varnish, delivered");
    Line<step> varnish = line("varnish", "kg", material, per_unit, "Varnish");

    void evaluate(Frame& f) const {
        for (auto k : f.converters())
            f.charge(varnish, k, f[coats] * f[laydown][k] / grams_per_kg * f[area][k] * f[fed][k], f[price]);
    }
};

}  // namespace
FLUTEBOOK_MODEL(Varnish, "varnish", "1.0.0", "Varnish by the coat")
