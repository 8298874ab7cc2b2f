// Units as texts and as conversions; that the factors are right is shown elsewhere, by published tables.
#include "host/fields/units.hpp"

#include <catch2/catch.hpp>

#include <atomic>
#include <thread>
#include <vector>

#include "host/fields/known_units.hpp"

using namespace flutebook::fields;

TEST_CASE("the trade's own units are known") {
    for (const std::string unit : {"MSF", "kWh", "box", "boxes", "sheet", "sheets", "money", "money/kg", "lb/MSF",
                                   "kJ/(kg K)", "g/m2", "degC", "1", "1/h", "m\u00B2", "\u00B5m"}) {
        CAPTURE(unit);
        REQUIRE(is_unit(unit));
    }
}

TEST_CASE("what is known without the library is what the library says, to the bit") {
    for (const auto unit : known_units()) {
        CAPTURE(unit);
        CHECK(is_unit_of_library(std::string(unit)));
        const auto same = conversion_of_library(std::string(unit), std::string(unit));
        REQUIRE(same.has_value());
        CHECK(same->is_identity());
    }
    for (const KnownConversion& known : known_conversions()) {
        CAPTURE(known.from, known.to);
        const auto converted = conversion_of_library(std::string(known.from), std::string(known.to));
        REQUIRE(converted.has_value());
        CHECK(converted->scale == known.scale);
        CHECK(converted->offset == 0);
    }
}

TEST_CASE("what the library would take for a unit by mistake is none") {
    for (const std::string unit :
         {"", " ", "m)", "(m", "furlongish", "msf", "m since 2000-01-01", "s@5", "K from 273.15", "mm ", "lb/"}) {
        CAPTURE(unit);
        REQUIRE_FALSE(is_unit(unit));
    }
}

TEST_CASE("a unit is a product of words and plain numbers, and nothing that would have to be calculated") {
    for (const std::string unit :
         {"1--1", "1-1",  "1+1",  "2**2", "2^2",           "1e308 1e308",      "1e3 m", "m^",    "m**", "m--2",
          "m99",  "m//s", "m..s", "()",   "((((((m))))))", "99999999999999 m", "0 m",   "m^2^2", "-m",  "+1"}) {
        CAPTURE(unit);
        CHECK_FALSE(is_unit(unit));
        CHECK_FALSE(conversion(unit, unit).has_value());
    }
    for (const std::string unit : {"1", "1/h", "lb/1000 ft2", "1000ft2", "kJ/(kg K)", "m^-2", "m**2", "(m/s)2", "%",
                                   "0.5 m", "kg.m2", "kg*m2", "money/t", "h-1"}) {
        CAPTURE(unit);
        CHECK(is_unit(unit));
    }
}

TEST_CASE("a thousand square feet convert as such, and a box is a sheet is one") {
    REQUIRE((*conversion("MSF", "ft2"))(1) == Approx(1000).epsilon(1e-14));
    REQUIRE((*conversion("kWh", "MJ"))(1) == 3.6);
    REQUIRE((*conversion("box", "sheet"))(7) == 7);
    REQUIRE((*conversion("money/box", "money"))(7) == 7);
}

TEST_CASE("a unit converts to itself without any rounding") {
    for (const std::string unit : {"mm", "degC", "lb/MSF", "money"}) REQUIRE(conversion(unit, unit)->is_identity());
    REQUIRE_FALSE(conversion("mm", "m")->is_identity());
    REQUIRE_FALSE(conversion("nonsense", "nonsense").has_value());
}

TEST_CASE("units that are defined by a short decimal convert by exactly that") {
    REQUIRE(conversion("in", "mm")->scale == 25.4);
    REQUIRE(conversion("ft", "m")->scale == 0.3048);
    REQUIRE(conversion("lb", "kg")->scale == 0.45359237);
}

TEST_CASE("temperatures have an offset, and there and back is the same") {
    const auto there = *conversion("degF", "degC");
    const auto back = *conversion("degC", "degF");
    REQUIRE(there(212) == Approx(100).epsilon(1e-12));
    REQUIRE(there(32) == Approx(0).margin(1e-12));
    for (const double value : {-40.0, 0.0, 20.0, 95.0, 1000.0})
        REQUIRE(back(there(value)) == Approx(value).epsilon(1e-12).margin(1e-12));
}

TEST_CASE("units of another dimension do not convert") {
    REQUIRE_FALSE(conversion("kg", "m").has_value());
    REQUIRE_FALSE(conversion("money", "1").has_value());
    REQUIRE_FALSE(conversion("money/kg", "money/m2").has_value());
}

TEST_CASE("a unit does not convert to its reciprocal, though the library would") {
    REQUIRE_FALSE(conversion("h", "1/h").has_value());
    REQUIRE_FALSE(conversion("1/m", "m").has_value());
}

TEST_CASE("turns and angles are no plain numbers, though the library would take them") {
    REQUIRE_FALSE(conversion("rpm", "1/h").has_value());
    REQUIRE_FALSE(conversion("degree", "1").has_value());
    REQUIRE(conversion("degree", "rad").has_value());
}

TEST_CASE("a unit that is no straight line does not convert") {
    REQUIRE_FALSE(conversion("lg(re 1 mW)", "W").has_value());
}

TEST_CASE("numbers and other origins in a written unit are refused, exponents are not") {
    for (const std::string unit : {"lb/1000 ft2", "1/h", "1000 m", "10^3 ft2", "m2.5", "m + 5", "m+5", "2 m", "ft 2",
                                   "s since 2000-01-01", "s SINCE 2000-01-01", "m @ 5", "K after 5", "5"}) {
        CAPTURE(unit);
        REQUIRE(why_unit_is_refused(unit).has_value());
    }
    for (const std::string unit : {"ft2", "m^2", "m**2", "m-2", "m^-2", "kJ/(kg.K)", "lb/MSF", "%", "m\u00B2",
                                   "kJ/kg\u00B7K", "EUR/t", "short_ton", "long_ton", "tonne", "kft", "km2"}) {
        CAPTURE(unit);
        REQUIRE_FALSE(why_unit_is_refused(unit).has_value());
    }
}

TEST_CASE("a thousand of a length to a power is refused, however it is written") {
    for (const std::string unit : {"kft2", "lb/kft2", "kft^2", "kft**2", "kft\u00B2", "kilofoot2", "KILOFEET2", "Mft2",
                                   "kin2", "lb\u00B7kft-2"}) {
        CAPTURE(unit);
        REQUIRE(why_unit_is_refused(unit).has_value());
    }
}

TEST_CASE("a ton that may be any of three is refused, however it is written") {
    for (const std::string unit :
         {"ton", "tons", "EUR/ton", "TON", "Tons", "kton", "kilotons", "Mton", "EUR\u00B7ton-1"}) {
        CAPTURE(unit);
        REQUIRE(why_unit_is_refused(unit).has_value());
    }
}

TEST_CASE("units can be asked about from many threads at once") {
    std::atomic<int> right{0};
    std::vector<std::thread> threads;
    for (int t = 0; t < 4; ++t)
        threads.emplace_back([&right] {
            for (int i = 0; i < 500; ++i)
                right += conversion("lb/MSF", "g/m2").has_value() && !is_unit("nonsense") ? 1 : 0;
        });
    for (auto& thread : threads) thread.join();
    REQUIRE(right == 2000);
}
