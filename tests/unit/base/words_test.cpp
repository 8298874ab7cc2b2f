// The small readers: the nearest name, days, short decimals, quoting.
#include <catch2/catch.hpp>

#include "host/base/date.hpp"
#include "host/base/decimal.hpp"
#include "host/base/near_spellings.hpp"
#include "host/base/quoted_text.hpp"

using namespace flutebook::base;

TEST_CASE("a misspelt name finds the known name that is most like it") {
    const std::vector<std::string> names{"run_waste", "roll_loss", "trim_min", "power"};
    REQUIRE(nearest("run_wast", names) == "run_waste");
    REQUIRE(nearest("runwaste", names) == "run_waste");
    REQUIRE(nearest("rlol_loss", names) == "roll_loss");
    REQUIRE(nearest("POWER", names) == "power");
    REQUIRE(nearest("trimm_min", names) == "trim_min");
}

TEST_CASE("a name unlike all others finds none") {
    REQUIRE_FALSE(nearest("varnish", {"run_waste", "roll_loss"}).has_value());
    REQUIRE_FALSE(nearest("", {"run_waste"}).has_value());
    REQUIRE_FALSE(nearest("B", {"C"}).has_value());
    REQUIRE_FALSE(nearest("run", {}).has_value());
    REQUIRE(nearest("b", {"C", "B"}) == "B");
}

TEST_CASE("of names equally near the first is taken, and a nearer one before it") {
    REQUIRE(nearest("FG3", {"FG1", "FG2"}) == "FG1");
    REQUIRE(nearest("FG22", {"FG11", "FG21", "FG222"}) == "FG21");
}

TEST_CASE("two swapped letters are one error") {
    REQUIRE(nearest("pirnt", {"paint", "print"}) == "print");
}

TEST_CASE("a word longer than any name finds none, at once") {
    const std::string text(100000, 'x');
    REQUIRE_FALSE(nearest(text, {text, "x"}).has_value());
}

TEST_CASE("a hint names the nearest, else the few there are, else nothing") {
    REQUIRE(did_you_mean("FG4", {"FG1", "DC1"}) == "; did you mean `FG1`");
    REQUIRE(did_you_mean("press", {"FG1", "DC1"}) == "; expected one of `FG1`, `DC1`");
    REQUIRE(did_you_mean("press", std::vector<std::string>(13, "FG1")).empty());
    REQUIRE(did_you_mean("press", {}).empty());
}

TEST_CASE("a day is written YYYY-MM-DD and stands in the calendar") {
    REQUIRE(to_string(*parse_date("2026-10-15")) == "2026-10-15");
    REQUIRE(parse_date("2024-02-29").has_value());
    for (const std::string text : {"2026-02-29", "2026-13-01", "2026-00-10", "2026-01-00", "2026-04-31", "2026-1-1",
                                   "15-10-2026", "2026/10/15", "2026-10-15 ", "+026-10-15", "2026-10-1a", ""}) {
        CAPTURE(text);
        REQUIRE_FALSE(parse_date(text).has_value());
    }
}

TEST_CASE("a number a few bits beside a short decimal is that decimal, another is left alone") {
    REQUIRE(short_decimal(25.400000000000002) == 25.4);
    REQUIRE(short_decimal(0.1 + 0.2) == 0.3);
    REQUIRE(short_decimal(1.0 / 3) == 1.0 / 3);
    REQUIRE(short_decimal(126.94311854573918) == 126.94311854573918);
    REQUIRE(short_decimal(0) == 0);
}

TEST_CASE("a quotation is cut between characters") {
    REQUIRE(shown("KL135") == "`KL135`");
    const auto cut = shortened(std::string(39, 'a') + "\u00E4\u00E4");
    REQUIRE(cut == std::string(39, 'a') + "...");
}
