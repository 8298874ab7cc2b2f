// scrap: what an order's scrap brings, and what it costs to carry, bale and load it.
//
//   scrap.credit[k]   = -scrap kg of step k x scrap price      (income: its amount is negative)
//   scrap.handling[k] =  scrap kg of step k x handling
// All causes are recoverable: roll ends, trim, sheets and cut-outs go to the same baler. Source: recovery beside the
// cost of waste, never inside it, after ISO 14051:2011; the rest common practice, no published source;
// the usual ranges are from memory.
#include <flutebook/plugin.hpp>

using namespace flutebook;

namespace {

constexpr Range price{0, 1e9};
constexpr double kg_per_tonne = 1000;

struct Scrap : Model {
    Need<step> mass = need("scrap.mass", "kg", "all that each step loses");
    Setting<by_plant> scrap_price =
        setting("scrap_price", "money/t", required, price, "what the mill pays for bales").usual({0, 300});
    Setting<by_plant> handling =
        setting("handling", "money/t", required, price, "collecting, baling and loading scrap").usual({0, 150});
    Line<step> credit = line("scrap.credit", "kg", recovery, per_unit, "Scrap sold");
    Line<step> handled = line("scrap.handling", "kg", waste_management, per_unit, "Scrap handling");

    void evaluate(Frame& f) const {
        const double earned = f[scrap_price] / kg_per_tonne;
        const double spent = f[handling] / kg_per_tonne;
        for (auto k : f.steps()) {
            f.charge(credit, k, 0 - f[mass][k], earned);
            f.charge(handled, k, f[mass][k], spent);
        }
    }
};

}  // namespace
FLUTEBOOK_MODEL(Scrap, "scrap", "1.0.0", "Scrap sold and handled")
