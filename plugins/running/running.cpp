// running: the hours that machines run for an order, and what their crews and their plant cost absorb.
//
//   hours[0] = web length / (web speed x 60);   hours[k] = pieces fed / speed;   none at dispatch
//   and none at step 0 for a board that is bought as sheets
//   running.labour[k] = hours x labour rate;    running.fixed[k] = hours x fixed rate
// Waste runs through the machine like the rest: hours go by what is fed, not by what is good. Source: common practice,
// no published source.
#include <flutebook/plugin.hpp>

using namespace flutebook;

namespace {

constexpr double minutes_per_hour = 60;
constexpr Range above_nothing{1e-6, 1e15};

struct Running : Model {
    Need<order> web_length = need("web.length", "m", "board combined, by length");
    Need<order> web_speed = need("web.speed", "m/min", "the corrugator's speed for this board", above_nothing);
    Need<order> made_here =
        need("board.made_here", "1", "1 where the board is made here, 0 where it is bought", {0, 1});
    Need<step> fed = need("run.fed", "1", "pieces fed to each step");
    Need<step> speed = need("step.speed", "1/h", "pieces that a converter takes by the hour");
    Need<step> labour_rate = need("step.labour_rate", "money/h", "the machine's crew by the hour");
    Need<step> fixed_rate = need("step.fixed_rate", "money/h", "the machine's plant cost by the hour");
    Provide<step> hours = provide("run.hours", "h", "hours that each machine runs, setup apart");
    Line<step> labour = line("running.labour", "h", system, per_unit, "Running, labour");
    Line<step> fixed = line("running.fixed", "h", system, period, "Running, fixed cost");

    void run(Frame& f, Index<step> k, double time) const {
        f.set(hours, k, time);
        f.charge(labour, k, time, f[labour_rate][k]);
        f.charge(fixed, k, time, f[fixed_rate][k]);
    }

    void evaluate(Frame& f) const {
        run(f, corrugator, f[made_here] * f[web_length] / (f[web_speed] * minutes_per_hour));
        for (auto k : f.converters()) run(f, k, f[fed][k] / f[speed][k]);
        f.set(hours, f.dispatch(), 0);
    }
};

}  // namespace
FLUTEBOOK_MODEL(Running, "running", "1.0.0", "Running time")
