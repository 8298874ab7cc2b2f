// How far long work has come.
#include "host/command_line/output.hpp"

#include <catch2/catch.hpp>

using flutebook::cli::Progress;
using namespace std::chrono_literals;

TEST_CASE("work that is over within two seconds is not talked about") {
    const auto begun = Progress::Clock::now();
    Progress progress(100, begun);
    CHECK(!progress.line(50, begun + 1900ms));
    CHECK(!progress.was_shown());
}

TEST_CASE("the progress of long work is shown four times a second, until it is done") {
    const auto begun = Progress::Clock::now();
    Progress progress(100, begun);
    CHECK(progress.line(10, begun + 2s) == "10 of 100 requests costed, about 18 s left");
    CHECK(progress.was_shown());
    CHECK(!progress.line(11, begun + 2100ms));
    CHECK(progress.line(12, begun + 2250ms) == "12 of 100 requests costed, about 16 s left");
    CHECK(!progress.line(100, begun + 9s));
}
