// One number as people write it.
#include "host/fields/quantity.hpp"

#include <catch2/catch.hpp>

using namespace flutebook::base;
using namespace flutebook::fields;

namespace {

GivenText given_text(const std::string& text) {
    return {text, false, {}};
}

double value_of(const std::string& text, const std::string& unit = "1", const std::string& currency = "EUR") {
    const auto read = read_quantity(given_text(text), unit, currency);
    if (const auto* problem = std::get_if<Problem>(&read)) FAIL(problem->text);
    return std::get<double>(read);
}

std::string problem_of(const std::string& text, const std::string& unit = "1", const std::string& currency = "EUR") {
    const auto read = read_quantity(given_text(text), unit, currency);
    CAPTURE(text);
    REQUIRE(std::holds_alternative<Problem>(read));
    return std::get<Problem>(read).text;
}

}  // namespace

TEST_CASE("a bare decimal is a number in the key's own unit") {
    REQUIRE(value_of("0") == 0);
    REQUIRE(value_of("12") == 12);
    REQUIRE(value_of("0.018", "mm") == 0.018);
    REQUIRE(value_of("-3.25") == -3.25);
    REQUIRE_FALSE(std::signbit(value_of("-0")));
}

TEST_CASE("only plain decimals are numbers") {
    for (const std::string text : {"010",   "00",    "-01",   "+1",  ".5",   "5.",   "1e3",    "1E3",   "0x10", "0o7",
                                   "1_000", "1,5",   "1 000", "nan", ".nan", "inf",  ".inf",   "-.inf", "",     "-",
                                   "--1",   "1.2.3", " 1",    "1-2", "12mm", "true", "\u0661", "one"}) {
        CAPTURE(text);
        REQUIRE(std::holds_alternative<Problem>(read_quantity(given_text(text), "1", "EUR")));
    }
    REQUIRE(problem_of("010", "mm") ==
            "not a number: found `010`, expected a plain decimal in `mm`, or a decimal, a space and a unit");
}

TEST_CASE("a number too large to calculate with is refused") {
    REQUIRE(problem_of("1" + std::string(400, '0')) ==
            "a number too large to calculate with: found `1" + std::string(39, '0') + "...`");
}

TEST_CASE("a quoted number is a text, unless it carries a unit") {
    auto given = given_text("135");
    given.quoted = true;
    const auto read = read_quantity(given, "g/m2", "EUR");
    REQUIRE(std::get<Problem>(read).text == "a quoted number is a text: found `135`; write it without the quotes");
    given.text = "135 g/m2";
    REQUIRE(std::get<double>(read_quantity(given, "g/m2", "EUR")) == 135);
}

TEST_CASE("a decimal, a space and a unit are converted to the key's unit") {
    REQUIRE(value_of("87 in", "mm") == 2209.8);
    REQUIRE(value_of("1.5 m", "mm") == 1500);
    REQUIRE(value_of("350 ft/min", "m/min") == Approx(106.68).epsilon(1e-14));
    REQUIRE(value_of("2 %", "1") == 0.02);
    REQUIRE(value_of("90 s", "min") == 1.5);
    REQUIRE(value_of("150 sheets/min", "1/h") == 9000);
    REQUIRE(value_of("26 lb/MSF", "g/m2") == Approx(126.94).epsilon(1e-4));
}

TEST_CASE("the plant's currency is money, another one is no unit") {
    REQUIRE(value_of("0.55 EUR/kg", "money/t") == 550);
    REQUIRE(value_of("640 money/t", "money/t") == 640);
    REQUIRE(problem_of("0.55 USD/kg", "money/t") ==
            "an unknown unit: found `USD/kg`, expected a unit that converts to `money/t`");
}

TEST_CASE("a currency code that is also a unit means money") {
    REQUIRE(value_of("0.55 CUP/kg", "money/kg", "CUP") == 0.55);
    REQUIRE(problem_of("0.55 CUP/kg", "money/kg", "EUR") ==
            "a unit of another kind: found `CUP/kg`, expected a unit that converts to `money/kg`");
}

TEST_CASE("a unit of another kind is refused with the one that was expected") {
    REQUIRE(problem_of("87 kg", "mm") == "a unit of another kind: found `kg`, expected a unit that converts to `mm`");
    REQUIRE(problem_of("87 wide", "mm") == "an unknown unit: found `wide`, expected a unit that converts to `mm`");
    REQUIRE(problem_of("5 kg") == "a unit of another kind: found `kg`, expected a bare number");
}

TEST_CASE("a unit is one space away from its number, and ends the text") {
    for (const std::string text : {"87  in", "87 in ", "87 ", "87in"}) {
        CAPTURE(text);
        REQUIRE(problem_of(text, "mm").starts_with("not a number: found "));
    }
}

TEST_CASE("a unit that the library would read otherwise than meant is refused") {
    REQUIRE(problem_of("26 lb/1000 ft2", "g/m2") ==
            "a number inside a unit: found `lb/1000 ft2`; write a plain unit, such as `MSF` for 1000 ft2");
    REQUIRE(problem_of("26 lb/kft2", "g/m2") ==
            "an ambiguous unit: found `lb/kft2`, which would be read as (kft)2; write `MSF` for 1000 ft2");
    REQUIRE(problem_of("600 EUR/ton", "money/t") ==
            "an ambiguous unit: found `EUR/ton`; write `t` for 1000 kg, `short_ton` for 2000 lb or `long_ton` for 2240 "
            "lb");
}

TEST_CASE("where the plant is shown us units a ton is 2000 lb, written in small letters") {
    const UnitWords us{"USD", UnitWords::Ton::short_ton};
    for (const std::string text : {"907.18474 USD/ton", "907.18474 USD/tons", "907.18474 USD/short_ton"}) {
        const auto read = read_quantity(given_text(text), "money/t", us);
        CAPTURE(text);
        REQUIRE(std::holds_alternative<double>(read));
        CHECK(std::get<double>(read) == Approx(1000).epsilon(1e-15));
    }
    CHECK(std::holds_alternative<Problem>(read_quantity(given_text("600 USD/Ton"), "money/t", us)));
    CHECK(std::holds_alternative<Problem>(read_quantity(given_text("600 USD/kton"), "money/t", us)));
}

TEST_CASE("the sign of a dollar is money where the currency is a dollar") {
    CHECK(value_of("1 $", "money", "USD") == 1);
    CHECK(value_of("0.25 $/kg", "money/t", "CAD") == 250);
    CHECK(problem_of("0.25 $/kg", "money/t", "EUR") ==
          "an unknown unit: found `$/kg`, expected a unit that converts to `money/t`");
    CHECK(problem_of("0.25 $/kg", "mm", "USD") ==
          "a unit of another kind: found `$/kg`, expected a unit that converts to `mm`");
    CHECK(problem_of("1 $$", "money", "USD").starts_with("an unknown unit"));
    CHECK(problem_of("1 x$", "money", "USD").starts_with("an unknown unit"));
}

TEST_CASE("before a unit a number may be a whole number and a fraction, as on a ruler in inches") {
    CHECK(value_of("15 1/4 in", "mm") == 387.35);
    CHECK(value_of("3/8 in", "mm") == 9.525);
    CHECK(value_of("0 1/64 in", "mm") == Approx(0.396875).epsilon(1e-15));
    CHECK(value_of("87 1/2 in", "mm") == 2222.5);
    CHECK(value_of("2 1/2 ft", "m") == 0.762);
    for (const std::string text :
         {"15 1/4",     "1/4",        "15 1/3 in",   "15 4/4 in",  "15 5/4 in",  "15 0/4 in",    "1/0 in",
          "015 1/4 in", "15  1/4 in", "15 1/4  in",  "15 1/4 in ", "15 1/4in",   "15-1/4 in",    "15 1/ in",
          "15 /4 in",   "15 1 in",    "15.5 1/4 in", "-1/4 in",    "15 01/4 in", "15 1/4 1/4 in"})
        static_cast<void>(problem_of(text, "mm"));
    CHECK(problem_of("15 1/4", "mm") ==
          "a fraction without its unit: found `15 1/4`; write `15.25`, or the unit behind it, as in `15 1/4 in`");
}

TEST_CASE("a share in per cent is a share, with a space before the sign or without") {
    REQUIRE(value_of("20%") == 0.2);
    REQUIRE(value_of("18 %") == 0.18);
    REQUIRE(value_of("12.5%") == 0.125);
    for (int percent = 0; percent <= 100; ++percent)
        REQUIRE(value_of(std::to_string(percent) + "%") == percent / 100.0);
    REQUIRE(problem_of("20%", "mm") == "a unit of another kind: found `%`, expected a unit that converts to `mm`");
}

TEST_CASE("a length may have a fraction, as a rule shows it") {
    REQUIRE(value_of("15 1/4 in", "mm") == 387.35);
    REQUIRE(value_of("3/4 in", "mm") == Approx(19.05).epsilon(1e-14));
    REQUIRE(value_of("15 63/64 in", "mm") == Approx(15.984375 * 25.4).epsilon(1e-14));
    REQUIRE(value_of("1 1/2 ft", "mm") == Approx(457.2).epsilon(1e-14));
}

TEST_CASE("a fraction that no rule shows is refused by name") {
    for (const std::string fraction : {"1/0", "0/4", "9/4", "4/4", "1/3", "1/128", "100/64"}) {
        CAPTURE(fraction);
        REQUIRE(problem_of("15 " + fraction + " in", "mm") ==
                "no fraction of a length: found `" + fraction + "` in `15 " + fraction +
                    " in`, expected one below 1, in halves to sixty-fourths; write a decimal");
    }
    REQUIRE(problem_of("15 1/4", "mm") ==
            "a fraction without its unit: found `15 1/4`; write `15.25`, or the unit behind it, as in `15 1/4 in`");
    REQUIRE(problem_of("15 1/4 kg", "kg") == "a fraction of what is no length: found `15 1/4 kg`; write `15.25 kg`");
}

TEST_CASE("what is no plain decimal is refused with the number to write, where one is near") {
    const auto meant = [](const std::string& text) {
        const std::string problem = problem_of(text, "mm");
        const auto semicolon = problem.find(';');
        return semicolon == std::string::npos ? std::string() : problem.substr(semicolon + 2);
    };
    CHECK(meant("1 000") == "write 1000");
    CHECK(meant("1 250 000.5 mm") == "write 1250000.5 mm");
    CHECK(meant("1'000") == "write 1000");
    CHECK(meant("1_000") == "write 1000");
    CHECK(meant("1\u00a0000") == "write 1000");
    CHECK(meant("1,5") == "write 1.5");
    CHECK(meant("2,500") == "write 2500 or 2.500");
    CHECK(meant("0,125 m") == "write 0.125 m");
    CHECK(meant("12mm") == "write 12 mm");
    for (const std::string text : {"1 00", "1 0000", "010", "1,2,3", "one", "-", "1 000,5", "12mm/s"}) {
        CAPTURE(text);
        CHECK(meant(text).empty());
    }
}

TEST_CASE("an empty value is called empty") {
    REQUIRE(problem_of("", "mm") == "an empty value: expected a plain decimal in `mm`");
}
