// What a plant's file may give for a setting: dates outermost, then a table by what the setting varies by, then steps
// over a need. What is wrong is told with file, line and column; what an order lacks refuses the order.
#include <catch2/catch.hpp>

#include "tests/unit/contract/setting_bench.hpp"

using namespace flutebook;
using contract::VariesBy;
using contract_test::over_pallets;
using contract_test::rate_by;
using contract_test::SettingBench;
using fixture::Lines;

TEST_CASE("a dated value counts from its day on") {
    const auto on = [](const std::string& day) {
        return SettingBench(rate_by(VariesBy::plant),
                            "{rate: [{from: 2026-01-01, value: 3}, {from: 2026-09-01, value: 4 EUR}]}")
            .value({{"2026-10-15", day}});
    };
    CHECK(on("2026-01-01") == 3);
    CHECK(on("2026-08-31") == 3);
    CHECK(on("2026-09-01") == 4);
    CHECK(on("2031-01-01") == 4);
}

TEST_CASE("a request before the first date of a setting is refused at its date") {
    const SettingBench bench(rate_by(VariesBy::plant), "{rate: [{from: 2026-11-01, value: 3}]}");
    CHECK(bench.complaints().empty());
    CHECK(bench.order_complaints() == Lines{"r.yaml:3:7: date: freight.rate has no value on 2026-10-15: its first "
                                            "value counts from 2026-11-01; date the "
                                            "request later, or give an earlier value"});
}

TEST_CASE("a dated value is held against range and unit at its place") {
    CHECK(SettingBench(rate_by(VariesBy::plant), "{rate: [{from: 2026-01-01, value: 3000}]}").complaints() ==
          Lines{"plugins.yaml:2:48: plugins.freight.rate[2026-01-01]: out of range: found 3000, expected 0 to 1000 "
                "money"});
}

TEST_CASE("dates of values rise, and each has a value") {
    const auto complaints = [](const std::string& rate) {
        return SettingBench(rate_by(VariesBy::plant), "{rate: " + rate + "}");
    };
    const auto plant_complaints = [](const std::string& rate) {
        const fixture::PlantFolder folder;
        folder.write("plugins.yaml", "plugins:\n  - freight: {rate: " + rate + "}\n");
        return folder.complaints();
    };
    CHECK(complaints("[{from: 2026-01-01, value: 1}]").complaints().empty());
    CHECK(plant_complaints("[{from: 2026-02-01, value: 1}, {from: 2026-02-01, value: 2}]") ==
          Lines{"plugins.yaml:2:59: plugins[1].freight.rate[2].from: out of order: found 2026-02-01 after 2026-02-01, "
                "expected rising dates"});
    CHECK(plant_complaints("[{from: soon, value: 1}]").front().starts_with("plugins.yaml:2:29: "));
    CHECK(
        plant_complaints("[{from: 2026-02-01}]") ==
        Lines{"plugins.yaml:2:22: plugins[1].freight.rate[1].value: missing: expected a number, a word, or a table of "
              "them"});
    CHECK(plant_complaints("[{from: 2026-02-01, value: 1, till: 2026-03-01}]").size() == 1);
    CHECK(plant_complaints("[]").size() == 1);
    CHECK(plant_complaints("[3]").size() == 1);
}

TEST_CASE("a request gives no dated values") {
    const SettingBench bench(rate_by(VariesBy::request), "{}");
    CHECK_THROWS(bench.value({{"extras: {}", "extras: {freight: {rate: [{from: 2026-01-01, value: 1}]}}"}}));
}

TEST_CASE("key default counts for what a table does not name, dates included") {
    const SettingBench bench(
        rate_by(VariesBy::machine),
        "{rate: [{from: 2026-01-01, value: {FG1: 4, default: 9}}, {from: 2027-01-01, value: {default: 1}}]}");
    CHECK(bench.complaints().empty());
    CHECK(bench.value({}, 0, "FG1") == 4);
    CHECK(bench.value({}, 0, "DC1") == 9);
    CHECK(bench.value({}, 0, "dispatch") == 9);
}

TEST_CASE("a table without default, of a setting without one, gives every paper, flute or machine") {
    CHECK(SettingBench(rate_by(VariesBy::flute), "{rate: {B: 4}}").complaints() ==
          Lines{"plugins.yaml:2:21: plugins.freight.rate: missing: rate has no default for C"});
}

TEST_CASE("a setting by customer has the value of the customer's own text, else the default") {
    const SettingBench bench(rate_by(VariesBy::customer), "{rate: {Ashlar Tiles: 4, Quarry: 5, default: 6}}");
    CHECK(bench.value() == 4);
    CHECK(bench.value({{"Ashlar Tiles", "Quarry"}}) == 5);
    CHECK(bench.value({{"Quarry", "ashlar tiles"}}) == 6);
    CHECK(bench.value({{"customer: ashlar tiles\n", ""}}) == 6);
}

TEST_CASE("a customer without a value refuses the request where the setting has no default at all") {
    const SettingBench bench(rate_by(VariesBy::customer), "{rate: {Quarry: 5}}");
    CHECK(bench.complaints().empty());
    CHECK(bench.order_complaints() ==
          Lines{"r.yaml:2:11: customer: freight.rate has no value for `Ashlar Tiles`: found neither that key nor "
                "`default` at plugins.yaml:2:21; add one of them"});
    CHECK(bench.order_complaints({{"customer: Ashlar Tiles\n", ""}}) ==
          Lines{"r.yaml:1:1: customer: freight.rate has no value for an order without a customer: found neither that "
                "key nor `default` at plugins.yaml:2:21; add one of them"});
    contract::Setting usually_7 = rate_by(VariesBy::customer);
    usually_7.initial = 7;
    CHECK(SettingBench(usually_7, "{rate: {Quarry: 5}}").value() == 7);
}

TEST_CASE("a board or a style that is unknown is answered by the list, never by another code") {
    CHECK(
        SettingBench(rate_by(VariesBy::board), "{rate: {B-141: 4}}").complaints() ==
        Lines{"plugins.yaml:2:22: plugins.freight.rate.B-141: unknown board, expected one of B-140, BC-200, C-140, or "
              "default"});
    const auto styles = SettingBench(rate_by(VariesBy::style), "{rate: {'0299': 4}}").complaints();
    REQUIRE(styles.size() == 1);
    CHECK_THAT(styles[0], Catch::Contains("plugins.freight.rate.0299: unknown style, expected one of") &&
                              Catch::Contains("0201") && !Catch::Contains("did you mean"));
}

TEST_CASE("settings by board and by style have the value of the order's own") {
    CHECK(SettingBench(rate_by(VariesBy::board), "{rate: {BC-200: 1, B-140: 2}}").value() == 2);
    CHECK(SettingBench(rate_by(VariesBy::style), "{rate: {'0110': 1, '0201': 2}}").value() == 2);
    CHECK(SettingBench(rate_by(VariesBy::board), "{rate: {BC-200: 1}}").order_complaints().size() == 1);
    CHECK(SettingBench(rate_by(VariesBy::style), "{rate: {'0110': 1}}").order_complaints() ==
          Lines{"r.yaml:4:8: style: freight.rate has no value for `0201`: found neither that key nor `default` at "
                "plugins.yaml:2:21; add one of them"});
}

TEST_CASE("a stepped setting has the value of the largest key that is not above the number") {
    const SettingBench bench(over_pallets(rate_by(VariesBy::plant)), "{rate: {0: 31, 8: 24, 20 h: 19}}");
    CHECK(bench.complaints().empty());
    CHECK(bench.value({}, 0) == 31);
    CHECK(bench.value({}, 7.99) == 31);
    CHECK(bench.value({}, 8 - 1e-10) == 24);
    CHECK(bench.value({}, 8) == 24);
    CHECK(bench.value({}, 19.5) == 24);
    CHECK(bench.value({}, 20) == 19);
    CHECK(bench.value({}, 500) == 19);
}

TEST_CASE("keys of steps may have a unit of their own") {
    CHECK(SettingBench(over_pallets(rate_by(VariesBy::plant)), "{rate: {0: 31, 480 min: 24}}").value({}, 8) == 24);
}

TEST_CASE("a stepped setting may have one value, and steps where none are declared are refused") {
    CHECK(SettingBench(over_pallets(rate_by(VariesBy::plant)), "{rate: 5}").value({}, 300) == 5);
    CHECK(SettingBench(rate_by(VariesBy::plant), "{rate: {0: 31, 8: 24}}").complaints() ==
          Lines{"plugins.yaml:2:21: plugins.freight.rate: wrong type: found a table, expected one value"});
}

TEST_CASE("steps that leave numbers out, do not rise or are never reached are refused at their keys") {
    const auto complaints = [](const std::string& rate) {
        return SettingBench(over_pallets(rate_by(VariesBy::plant)), "{rate: " + rate + "}").complaints();
    };
    CHECK(
        complaints("{1: 31, 8: 24}") ==
        Lines{"plugins.yaml:2:22: plugins.freight.rate.1: no value below 1: delivery.pallets can be 0 h; begin with a "
              "step from there"});
    CHECK(complaints("{0: 31, 8: 24, 8.0: 23}") ==
          Lines{"plugins.yaml:2:36: plugins.freight.rate.8.0: out of order: found 8 after 8, expected rising steps"});
    CHECK(complaints("{0: 31, 501: 24}") ==
          Lines{"plugins.yaml:2:29: plugins.freight.rate.501: never reached: delivery.pallets is at most 500 h; leave "
                "the step out"});
    CHECK(complaints("{0: 31, many: 24}").size() == 1);
    CHECK(complaints("{0: 31, 8: 2400}") ==
          Lines{"plugins.yaml:2:32: plugins.freight.rate.8: out of range: found 2400, expected 0 to 1000 money"});
    CHECK(complaints("{0: 31, 8: {0: 1}}").size() == 1);
    CHECK(complaints("{}").size() == 1);
    CHECK(complaints("{0: 31, default: 1}").size() == 1);
}

TEST_CASE("one outer key and one step: freight by customer and pallets") {
    const SettingBench bench(over_pallets(rate_by(VariesBy::customer)),
                             "{rate: {Ashlar Tiles: {0: 31, 8: 24}, Quarry: 40, default: {0: 50, 100: 45}}}");
    CHECK(bench.complaints().empty());
    CHECK(bench.value({}, 9) == 24);
    CHECK(bench.value({{"Ashlar Tiles", "Quarry"}}, 9) == 40);
    CHECK(bench.value({{"Quarry", "Somebody Else"}}, 101) == 45);
    // A third level is no value.
    const fixture::PlantFolder folder;
    folder.write("plugins.yaml", "plugins:\n  - freight: {rate: {A: {0: {1: 2}}}}\n");
    CHECK(folder.complaints() == Lines{"plugins.yaml:2:29: plugins[1].freight.rate.A.0: wrong type: found a map, "
                                       "expected a number or a word"});
}

TEST_CASE("numbers alone as keys of a stepped table by customer could be either, and are refused") {
    const auto complaints = [](const std::string& rate) {
        return SettingBench(over_pallets(rate_by(VariesBy::customer)), "{rate: " + rate + "}").complaints();
    };
    REQUIRE(complaints("{0: 31, 8: 24}").size() == 1);
    CHECK_THAT(complaints("{0: 31, 8: 24}")[0],
               Catch::Contains("plugins.yaml:2:21: plugins.freight.rate: customers or steps"));
    CHECK(complaints("{default: {0: 31, 8: 24}}").empty());
    CHECK(complaints("{1001: {0: 31}, 1002: {0: 24}}").empty());
}

TEST_CASE("a setting by choice is keyed by the names of the choice, and lacks none that an order brings") {
    const SettingBench bench(rate_by(VariesBy::choice), "{rate: {near: 31}}");
    CHECK(bench.complaints().empty());
    CHECK(bench.value({}, 0, "near") == 31);
    CHECK(bench.order_complaints({{"extras: {}", "extras: {freight: {zone: far}}"}}) ==
          Lines{"r.yaml:11:26: extras.freight.zone: freight.rate has no value for far: found neither that key nor "
                "`default` at plugins.yaml:2:21; add one of them"});
    CHECK(SettingBench(rate_by(VariesBy::choice), "{rate: {nearby: 31}}").complaints() ==
          Lines{"plugins.yaml:2:22: plugins.freight.rate.nearby: unknown choice, did you mean 'near'?"});
}

TEST_CASE(
    "a setting by a choice that another model gives lacks none of its names, whether or not that model reads it") {
    for (const auto taker : {contract::SettingTaker::nobody, contract::SettingTaker::replacer}) {
        SettingBench bench(rate_by(VariesBy::choice), "{rate: {near: 31}}");
        bench.replace_zone(taker);
        CHECK(bench.complaints() ==
              Lines{"plugins.yaml:2:21: plugins.freight.rate: missing: rate has no default for far"});
        SettingBench complete(rate_by(VariesBy::choice), "{rate: {near: 31, default: 40}}");
        complete.replace_zone(taker);
        CHECK(complete.complaints().empty());
    }
}

TEST_CASE("a value outside what is usual is a warning with its place, and no error") {
    contract::Setting setting = over_pallets(rate_by(VariesBy::plant));
    setting.usual = contract::Range{10, 100};
    const SettingBench bench(setting, "{rate: {0: 31, 8: 2, 20: 150}}");
    CHECK(bench.complaints().empty());
    CHECK(bench.unusual() == std::vector<std::string>{
                                 "plugins.yaml:2:32: plugins.freight.rate.8: unusual: found 2, usually 10 to 100 money",
                                 "plugins.yaml:2:39: plugins.freight.rate.20: unusual: found 150, usually 10 to 100 "
                                 "money"});
    CHECK(SettingBench(setting, "{rate: 10}").unusual().empty());
}

TEST_CASE("where a table of the plant's codes could not be read, no key of a setting is blamed for it") {
    const SettingBench bench(rate_by(VariesBy::board), "{rate: {B-140: 3000, B-999: 3}}");
    REQUIRE(bench.complaints().size() == 2);
    const Lines left = bench.complaints_of_half_a_plant();
    REQUIRE(left.size() == 1);
    CHECK(left.front().find("plugins.freight.rate.B-140: out of range") != std::string::npos);
}

TEST_CASE("an empty setting is called empty, with what to write") {
    CHECK(
        SettingBench(rate_by(VariesBy::plant), "{rate: }").complaints() ==
        Lines{"plugins.yaml:2:15: plugins.freight.rate: an empty value: expected 0 to 1000 money; write it behind the "
              "key"});
}

TEST_CASE("a range without a unit is shown without one") {
    contract::Setting share = rate_by(VariesBy::plant);
    share.unit = "1";
    share.range = {0, 1};
    CHECK(SettingBench(share, "{rate: 7}").complaints() ==
          Lines{"plugins.yaml:2:21: plugins.freight.rate: out of range: found 7, expected 0 to 1"});
    CHECK(SettingBench(share, "{}").complaints().front().find("expected 0 to 1: ") != std::string::npos);
}
