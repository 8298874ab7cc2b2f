// How the texts of options become values, and what is said of those that cannot.
#include "host/command_line/option_readers.hpp"

#include <catch2/catch.hpp>

using namespace flutebook;
using namespace flutebook::cli;
using namespace std::chrono;

TEST_CASE("a whole number is read as decimal, whatever it begins with, and only whole") {
    std::int64_t value = 0;
    const Reader read = read_whole_number({"seed", 0}, value);
    CHECK(read("010").empty());
    CHECK(value == 10);
    CHECK(read("9223372036854775807").empty());
    CHECK(value == 9223372036854775807);
    for (const char* wrong : {"", "0x10", "1.5", "1e3", "+1", " 1", "1 ", "-1", "9223372036854775808"})
        CHECK(read(wrong) == "is no seed: `" + std::string(wrong) + "`; give a whole number from 0 on");
    CHECK(value == 9223372036854775807);
}

TEST_CASE("a whole number outside its range is refused with the range") {
    std::int64_t value = 0;
    const Reader read = read_whole_number({"number of orders", 1, 10}, value);
    CHECK(read("1").empty());
    CHECK(read("10").empty());
    CHECK(read("11") == "is no number of orders: `11`; give a whole number from 1 to 10");
    CHECK(read("0") == "is no number of orders: `0`; give a whole number from 1 to 10");
    CHECK(value == 10);
}

TEST_CASE("a month and a day are read as the calendar has them") {
    ledger::Month month{};
    CHECK(read_month(month)("2026-02").empty());
    CHECK(month == 2026y / February);
    CHECK(read_month(month)("2026-13") == "is not a month: `2026-13`; write YYYY-MM");
    CHECK(read_month(month)("2026-2") == "is not a month: `2026-2`; write YYYY-MM");
    CHECK(month == 2026y / February);
    std::optional<base::Date> day;
    CHECK(read_day(day)("2028-02-29").empty());
    CHECK(day == base::Date(2028y / February / 29));
    CHECK(read_day(day)("2026-02-29") == "is not a day: `2026-02-29`; write YYYY-MM-DD");
}

TEST_CASE("a text that is given empty is a text, not none") {
    std::optional<std::string> head;
    CHECK(read_line(head)("").empty());
    CHECK(head == std::string());
}

TEST_CASE("a name, a number and a reason are one line that can be seen") {
    std::string value;
    const Reader read = read_line(value);
    CHECK(read("26-0417 Söhne").empty());
    CHECK(value == "26-0417 Söhne");
    CHECK(read("26\xE2\x80\xAE"
               "0417") ==
          "holds the invisible character U+202E: `26\xE2\x80\xAE"
          "0417`; write it as one line that can be seen");
    CHECK_FALSE(read("a\nb").empty());
    CHECK_FALSE(read("a\xC2\x9B").empty());
    CHECK_FALSE(read("a\xFF").empty());
}

TEST_CASE("an inside size is two or three lengths in mm, and nothing that might be another number") {
    std::vector<double> value;
    const Reader read = read_inside_size(value);
    CHECK(read("400x300x250.5").empty());
    CHECK(value == std::vector<double>{400, 300, 250.5});
    CHECK(read("600x400").empty());
    CHECK(value == std::vector<double>{600, 400});
    for (const char* wrong : {"", "400", "400x", "x300x250", "400x300x250x1", "400x0x250", "400x-1x250", "1e3x300x250",
                              "4,5x300x250", "400x300x30000", "400 x300x250"})
        CHECK(read(wrong) ==
              "is not a size: `" + std::string(wrong) + "`; write LxBxH in mm, 400x300x250, or LxB for a sheet");
}

TEST_CASE("measures are given by name, each once") {
    std::vector<std::pair<std::string, double>> values;
    const Reader read = read_measure(values);
    CHECK(read("deep=60").empty());
    CHECK(read("play=2.5").empty());
    CHECK(values == std::vector<std::pair<std::string, double>>{{"deep", 60}, {"play", 2.5}});
    CHECK(read("deep=70") == "gives `deep` twice; give each measure once");
    for (const char* wrong : {"deep", "=60", "deep=", "deep=6 0", "deep=1e2", "de\nep=60"})
        CHECK_THAT(read(wrong), Catch::Matchers::StartsWith("is not a measure: "));
    CHECK(values.size() == 2);
}

TEST_CASE("a drawing's file ends in .svg") {
    std::string value;
    CHECK(read_drawing_file(value)("box.svg").empty());
    CHECK(read_drawing_file(value)("box.png") == "is not a file for a drawing: `box.png`; end it in .svg");
}
