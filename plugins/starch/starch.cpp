// starch: the adhesive of the glue lines, bought as pearl starch, caustic soda and borax.
//
//   starch = dry adhesive kg x (starch share x price + caustic share x price + borax share x price)
// Shares are of dry adhesive and prices per dry kg: pearl starch is bought with about a tenth of water, so a price
// per bag must be divided by its dry part. Shares need not add up to 1 (other solids may be free), but never to more.
// Source: the parts of a starch adhesive and their shares, J. Kohl, Calculating starch adhesive solids, 2010; the sum
// is common practice, no published source, and the usual ranges are from memory.
#include <flutebook/plugin.hpp>

using namespace flutebook;

namespace {

constexpr Range share{0, 1};
constexpr Range price{0, 1e6};
constexpr double whole = 1 + 1e-9;  // shares written as decimals may add up to a hair more than 1

struct Starch : Model {
    Need<order> dry = need("adhesive.dry", "kg", "dry adhesive used");
    Setting<by_plant> starch_price =
        setting("starch_price", "money/kg", required, price, "starch, by dry kg").usual({0.2, 3});
    Setting<by_plant> caustic_price =
        setting("caustic_price", "money/kg", required, price, "caustic soda, by dry kg").usual({0.2, 3});
    Setting<by_plant> borax_price =
        setting("borax_price", "money/kg", required, price, "borax, by dry kg").usual({0.3, 5});
    Setting<by_plant> starch_share =
        setting("starch_share", "1", required, share, "starch in the dry adhesive").usual({0.8, 1});
    Setting<by_plant> caustic_share =
        setting("caustic_share", "1", required, share, "caustic in the dry adhesive").usual({0.005, 0.08});
    Setting<by_plant> borax_share =
        setting("borax_share", "1", required, share, "borax in the dry adhesive").usual({0, 0.06});
    Line<step> adhesive = line("starch", "kg", material, per_unit, "Starch adhesive, dry");
    Reason too_much = reason("starch_share, caustic_share and borax_share add up to more than 1");

    void evaluate(Frame& f) const {
        if (f[starch_share] + f[caustic_share] + f[borax_share] > whole) f.refuse(too_much);
        f.charge(
            adhesive, corrugator, f[dry],
            f[starch_share] * f[starch_price] + f[caustic_share] * f[caustic_price] + f[borax_share] * f[borax_price]);
    }
};

}  // namespace
FLUTEBOOK_MODEL(Starch, "starch", "1.0.0", "Starch adhesive")
