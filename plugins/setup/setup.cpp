// setup: the time that machines stand while they are set for an order, the corrugator's order change and the loading
// at dispatch among them.
//
//   setup.labour[k] = setup minutes / 60 x labour rate;   setup.fixed[k] = setup minutes / 60 x fixed rate
// Once a run, whatever the quantity. Labour is paid for the run; the fixed rate absorbs plant cost by the hour.
// Source: common practice, no published source.
#include <flutebook/plugin.hpp>

using namespace flutebook;

namespace {

constexpr double minutes_per_hour = 60;

struct Setup : Model {
    Need<step> time = need("step.setup_time", "min", "order change, setup or dispatch, once a run");
    Need<step> labour_rate = need("step.labour_rate", "money/h", "the machine's crew by the hour");
    Need<step> fixed_rate = need("step.fixed_rate", "money/h", "the machine's plant cost by the hour");
    Line<step> labour = line("setup.labour", "h", system, per_run, "Setup, labour");
    Line<step> fixed = line("setup.fixed", "h", system, period, "Setup, fixed cost");

    void evaluate(Frame& f) const {
        for (auto k : f.steps()) {
            const double hours = f[time][k] / minutes_per_hour;
            f.charge(labour, k, hours, f[labour_rate][k]);
            f.charge(fixed, k, hours, f[fixed_rate][k]);
        }
    }
};

}  // namespace
FLUTEBOOK_MODEL(Setup, "setup", "1.0.0", "Setup time")
