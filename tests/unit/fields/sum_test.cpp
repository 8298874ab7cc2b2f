// Sums of box styles: what they come to, and what is refused before any library reads it.
#include "host/fields/sum.hpp"

#include <catch2/catch.hpp>
#include <cmath>
#include <thread>

using namespace flutebook::fields;

namespace {

NamedValues box_values() {
    NamedValues values;
    values.set("L", 400);
    values.set("B", 300);
    values.set("H", 250);
    values.set("t", 3.3);
    return values;
}

double worked_out(const std::string& text) {
    const auto value = value_of_sum(text, box_values());
    INFO(text);
    if (const auto* problem = std::get_if<Problem>(&value)) FAIL(problem->text);
    return std::get<double>(value);
}

std::string refused(const std::string& text) {
    const auto value = value_of_sum(text, box_values());
    INFO(text);
    REQUIRE(std::holds_alternative<Problem>(value));
    return std::get<Problem>(value).text;
}

bool has(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("a sum is worked out as arithmetic has it, to the bit") {
    CHECK(worked_out("B/2 + 1.5") == 151.5);
    CHECK(worked_out("B/3 + L*0.1 - t") == 300.0 / 3 + 400 * 0.1 - 3.3);
    CHECK(worked_out("-t*2") == -6.6);
    CHECK(worked_out("L - B - H") == -150);
    CHECK(worked_out("L/B/2") == 400.0 / 300 / 2);
    CHECK(worked_out("min(L, B)*max(B, H)") == 300.0 * 300);
    CHECK(worked_out("min( -L , 2*(B+1) )") == -400);
    CHECK(worked_out(" max ( L , B ) ") == 400);
    CHECK(worked_out("floor (2.5) * ( B )") == 600);
    CHECK(worked_out("0.1 + 0.2") == 0.1 + 0.2);
    CHECK(std::signbit(worked_out("0*(-L)")) == false);
}

TEST_CASE("floor and ceil of a sum forgive a billionth") {
    CHECK(worked_out("floor(2.9999999999)") == 3);
    CHECK(worked_out("ceil(3.0000000001)") == 3);
    CHECK(worked_out("ceil(3.001)") == 4);
    CHECK(worked_out("floor(-0.5)") == -1);
}

TEST_CASE("a sum with a second value is refused") {
    CHECK(has(refused("1,5"), "a second value"));
    CHECK(has(refused("L, B"), "a second value"));
    CHECK(has(refused("min(L, B, H)"), "min of two"));
    CHECK(has(refused("floor(L, B)"), "floor of one"));
}

TEST_CASE("a sum that is no finite number is refused") {
    CHECK(refused("1/0") == "no finite number");
    CHECK(refused("0/0") == "no finite number");
    CHECK(refused("L/(B - 300)") == "no finite number");
}

TEST_CASE("a sum with a part that is not finite is refused, even if the whole is finite") {
    for (const char* text : {"min(1/0, 5)", "max(5, -1/0)", "1/(1/0)", "max(1, 0/0)", "floor(0/0)*0", "1/(L*B*H/0)",
                             "5 + 1/(-1/(B - 300))"}) {
        INFO(text);
        CHECK(refused(text) == "no finite number");
    }
}

TEST_CASE("what only the library knows is refused before it") {
    for (const char* text :
         {"",          " ",        "L +",    "+ L",  "L ^ 2", "L ** 2", "a = 5",  "L = 5",    "L == B",
          "L ? B : H", "L && B",   "sin(L)", "_pi",  "e(",    "1e3",    "0x10",   ".5",       "5.",
          "1.2.3",     "L B",      "2L",     "(L",   "L)",    "()",     "min L",  "min()",    "min(L)",
          "\"L\"",     "L;B",      "L#B",    "L\\B", "L--B",  "L*-B",   "L - -B", "1 000",    "rint(L)",
          "sum(L,B)",  "\xC3\x97", "L!",     "[L]",  "#",     "min",    "floor",  "if(L,B,H)"}) {
        INFO(text);
        CHECK(std::holds_alternative<Problem>(names_in_sum(text)));
        CHECK(std::holds_alternative<Problem>(value_of_sum(text, box_values())));
    }
}

TEST_CASE("a sum is never read up to a NUL and no further") {
    using std::string_literals::operator""s;
    for (const std::string& text : {"L\0(B"s, "L\0"s, "\0L"s, "L + \0B"s, "min(L\0, B)"s, "-t\0 garbage"s}) {
        CHECK(std::holds_alternative<Problem>(names_in_sum(text)));
        CHECK(std::holds_alternative<Problem>(value_of_sum(text, box_values())));
    }
}

TEST_CASE("a sum is at most 200 characters and its brackets 20 deep") {
    CHECK(has(refused("L" + std::string(200, ' ')), "201 characters"));
    CHECK(worked_out(std::string(20, '(') + "L" + std::string(20, ')')) == 400);
    CHECK(has(refused(std::string(21, '(') + "L" + std::string(21, ')')), "deeper than 20"));
}

TEST_CASE("the names of a sum are found, each once") {
    const auto names = names_in_sum("L + min(B, L) - play_2*t");
    REQUIRE(std::holds_alternative<std::vector<std::string>>(names));
    CHECK(std::get<std::vector<std::string>>(names) == std::vector<std::string>{"L", "B", "play_2", "t"});
    CHECK(has(refused("L + play_2"), "`play_2` has no value"));
    CHECK(is_sum_name("play_2"));
    CHECK_FALSE(is_sum_name("2play"));
    CHECK_FALSE(is_sum_name("min"));
    CHECK_FALSE(is_sum_name(""));
}

TEST_CASE("one sum worked out by eight threads at once gives each its own number") {
    const std::string text = "L*2 + B/3 - min(H, t)";
    std::vector<std::thread> threads;
    std::vector<int> wrong(8);
    for (std::size_t n = 0; n < wrong.size(); ++n)
        threads.emplace_back([&, n] {
            for (int i = 1; i <= 20000; ++i) {
                NamedValues values;
                const double l = i + static_cast<double>(n) / 8, b = 3.0 * i;
                values.set("L", l);
                values.set("B", b);
                values.set("H", 1e6);
                values.set("t", 4);
                const auto value = value_of_sum(text, values);
                if (std::get<double>(value) != l * 2 + b / 3 - 4) ++wrong[n];
            }
        });
    for (auto& thread : threads) thread.join();
    CHECK(wrong == std::vector<int>(8));
}
