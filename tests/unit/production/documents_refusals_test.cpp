// The list of what is refused, as a person reads it.
#include <catch2/catch.hpp>

#include "host/base/errors.hpp"
#include "host/production/row_validation.hpp"

using namespace flutebook;

namespace {

std::vector<std::string> lines_of(const production::Refusals& refusals) {
    try {
        refusals.throw_if_any();
    } catch (const InputError& error) {
        CHECK(error.whose() == InputError::Whose::request);
        return error.lines();
    }
    return {};
}

}  // namespace

TEST_CASE("a refusal names file, line and column, as far as it has them") {
    production::Refusals refusals;
    CHECK(lines_of(refusals).empty());
    refusals.add("paper.csv", 3, "kg", "found `x`; expected a number");
    refusals.add("paper.csv", 4, "", "found 4 fields; expected 6");
    refusals.add("bales.csv", 0, "", "no such file");
    CHECK(lines_of(refusals) == std::vector<std::string>{"paper.csv:3: kg: found `x`; expected a number",
                                                         "paper.csv:4: found 4 fields; expected 6",
                                                         "bales.csv: no such file"});
}

TEST_CASE("a heap of refusals is listed up to a thousand, and the rest is counted") {
    production::Refusals refusals;
    for (int line = 2; line < 250002; ++line) refusals.add("paper.csv", line, "kg", "found `x`; expected a number");
    const auto lines = lines_of(refusals);
    REQUIRE(lines.size() == 1001);
    CHECK(lines[999] == "paper.csv:1001: kg: found `x`; expected a number");
    CHECK(lines[1000] ==
          "post: too many faults to list: found 249000 more than the 1000 above; correct these and post "
          "again");
}
