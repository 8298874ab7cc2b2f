// The arithmetic of a run: whole pieces, and that the web is used up to the last square metre.
#include <rapidcheck.h>
#include <catch2/catch.hpp>
#include <flutebook/run.hpp>

#include <cmath>

namespace run = flutebook::run;

TEST_CASE("990 good pieces at one percent waste take 1000, not 1001") {
    CHECK(run::whole_up(990 / 0.99) == 1000);
    CHECK(run::fed(990, 0.01, 0) == 1000);
    CHECK(run::fed(990, 0.01, 40) == 1040);
}

TEST_CASE("waste in whole percents of whole pieces never costs a piece by rounding") {
    int misjudged = 0;
    for (int percent = 1; percent < 100; ++percent)
        for (int hundreds = 1; hundreds <= 1000; ++hundreds) {
            const double good = hundreds * (100 - percent);
            const double waste = percent / 100.0;
            if (run::fed(good, waste, 0) != hundreds * 100) FAIL(good << " good at " << percent << " % waste");
            misjudged += std::ceil(good / (1 - waste)) != hundreds * 100 ? 1 : 0;
        }
    // Without the hair it would, in hundreds of cases.
    CHECK(misjudged > 100);
}

TEST_CASE("a hair over a whole number is that number, more than a hair is the next") {
    CHECK(run::whole_up(1000 + 5e-10) == 1000);
    CHECK(run::whole_up(1000 + 5e-9) == 1001);
    CHECK(run::whole_up(1000) == 1000);
    CHECK(run::whole_up(999.5) == 1000);
}

TEST_CASE("a hair under a whole number is that number going down as well") {
    CHECK(run::whole_down(3 - 5e-10) == 3);
    CHECK(run::whole_down(3 - 5e-9) == 2);
    CHECK(run::whole_down(3.9) == 3);
    CHECK(run::whole_down(2.0) == 2);
}

TEST_CASE("nothing of anything is a plain zero") {
    CHECK(run::whole_up(-1e-12) == 0);
    CHECK_FALSE(std::signbit(run::whole_up(-1e-12)));
    CHECK(run::fed(0, 0.02, 0) == 0);
    CHECK(run::fed(0, 0.02, 60) == 60);
}

TEST_CASE("sheets hold boxes, and the knife cuts whole rows") {
    CHECK(run::sheets_for(1000, 1) == 1000);
    CHECK(run::sheets_for(1000, 4) == 250);
    CHECK(run::sheets_for(1001, 4) == 251);
    CHECK(run::cuts(1000, 3) == 334);
    CHECK(run::cuts(999, 3) == 333);
}

TEST_CASE("the web is longer than its good board by the order change and what runs to waste") {
    CHECK(run::web_length(980, 0.02, 25) == Approx(1025).epsilon(1e-14));
    CHECK(run::web_length(980, 0, 0) == 980);
}

TEST_CASE("paper issued covers what is stripped and left on the core") {
    // 1000 m2 of 140 g/m2 are 140 kg; at 2 % roll loss they take 140 / 0.98
    CHECK(run::paper_issued(1000, 140, 1, 0) == 140);
    CHECK(run::paper_issued(1000, 140, 1, 0.02) == Approx(140 / 0.98).epsilon(1e-14));
    CHECK(run::paper_issued(1000, 100, 1.5, 0) == 150);
    CHECK(run::mass(1000, 373.5) == 373.5);
}

TEST_CASE("the web is good sheets and losses, to the last square metre") {
    const bool holds = rc::check("area in = area out", [] {
        const auto between = [](int low, int high) { return *rc::gen::inRange(low, high); };
        const double chop = between(300, 4500) / 1000.0;
        const double slit = between(150, 2400) / 1000.0;
        const double outs = between(1, 7);
        const double trim = between(0, 400) / 1000.0;
        const double good = between(1, 200000);
        const double order_change = between(0, 60);
        const double waste = between(0, 200) / 1000.0;
        const double used = outs * slit;
        const double length = run::web_length(run::cuts(good, outs) * chop, waste, order_change);
        const run::WebLoss lost =
            run::web_loss({used + trim, used, outs, chop, chop * slit}, length, order_change, good);
        const double in = length * (used + trim);
        const double out = good * chop * slit + lost.side_trim + lost.order_change + lost.run_waste + lost.surplus;
        RC_ASSERT(std::fabs(in - out) <= 1e-12 * in);
        for (const double loss : {lost.side_trim, lost.order_change, lost.run_waste, lost.surplus})
            RC_ASSERT(loss >= -1e-12 * in);
    });
    CHECK(holds);
}
