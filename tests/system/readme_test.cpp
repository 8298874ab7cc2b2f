// The README shows what the program prints, not what it once printed.
#include <catch2/catch.hpp>
#include <fstream>
#include <sstream>
#include <string>

#include "tests/system/face.hpp"

using namespace flutebook::fixture;

namespace {

std::string readme() {
    std::ostringstream text;
    text << std::ifstream(FLUTEBOOK_SOURCE_DIR "/README.md").rdbuf();
    return text.str();
}

// What stands between the fences that follow these words.
std::string block_after(const std::string& page, const std::string& words) {
    const std::string fence = "```\n";
    const auto said = page.find(words);
    REQUIRE(said != std::string::npos);
    const auto opening = page.find(fence, said);
    REQUIRE(opening != std::string::npos);
    const auto first = opening + fence.size();
    return page.substr(first, page.find(fence, first) - first);
}

}  // namespace

TEST_CASE("the quote in the README is the beginning of what the program prints") {
    const std::string shown = block_after(readme(), "This is its beginning:");
    CHECK(shown.size() > 1000);
    const std::string printed = quote_demo({demo_request("R-1001")}).output;
    CHECK(printed.substr(0, shown.size()) == shown);
}
