// tariff: power that costs more in peak hours. This model replaces the price that the model energy charges:
//
//   prefer: {energy.power_price: tariff}
//
//   energy.power_price = the plant's price + surcharge x share of the shift that lies in peak hours
// An order without a chosen shift takes the mean of the three shifts: it is not known yet when it will run.
// Source: common practice, no published source; the plant's supply contract gives hours and surcharge.
#include <flutebook/plugin.hpp>

using namespace flutebook;

namespace {

constexpr const char* shifts[] = {"any", "early", "late", "night"};
constexpr double early = 1, late = 2, night = 3;  // the values of `shift`
constexpr Range share{0, 1};
constexpr Range price{0, 1e6};

struct Tariff : Model {
    // A model that replaces a number may need it: it receives the value that it replaces.
    Need<order> plain = need("energy.power_price", "money/kWh", "electricity, outside peak hours", price);
    Setting<by_plant> surcharge = setting("surcharge", "money/kWh", required, price, "on top in peak hours");
    Setting<by_plant> early_peak = setting("early_peak", "1", 0, share, "share of the early shift in peak hours");
    Setting<by_plant> late_peak = setting("late_peak", "1", 0, share, "share of the late shift in peak hours");
    Setting<by_plant> night_peak = setting("night_peak", "1", 0, share, "share of the night shift in peak hours");
    Setting<by_request> shift = choice("shift", shifts, 0, "the shift that the order is to run in");
    Provide<order> charged =
        provide("energy.power_price", "money/kWh", "electricity, by the hour it is used", {0, 2e6});

    double peak(const Frame& f) const {
        if (f[shift] == early) return f[early_peak];
        if (f[shift] == late) return f[late_peak];
        if (f[shift] == night) return f[night_peak];
        return (f[early_peak] + f[late_peak] + f[night_peak]) / 3;
    }

    void evaluate(Frame& f) const { f.set(charged, f[plain] + f[surcharge] * peak(f)); }
};

}  // namespace
FLUTEBOOK_MODEL(Tariff, "tariff", "1.0.0", "Power by the time of use")
