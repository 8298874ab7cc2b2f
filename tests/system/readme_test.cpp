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
    const std::string fence = "```";
    const auto said = page.find(words);
    REQUIRE(said != std::string::npos);
    const auto opening = page.find(fence, said);
    REQUIRE(opening != std::string::npos);
    const auto first = page.find('\n', opening) + 1;
    return page.substr(first, page.find(fence, first) - first);
}

}  // namespace

TEST_CASE("the short answer and the sheet in the README are what the program prints") {
    const std::string page = readme();
    const std::string answer = block_after(page, "prints the short answer:");
    CHECK(answer.size() > 1000);
    CHECK(quote_demo({demo_request("R-1001")}).output == answer + "\n");
    const std::string sheet = block_after(page, "`--sheet 500` adds only that of 500:");
    CHECK(sheet.size() > 1000);
    CHECK(quote_demo({demo_request("R-1001")}, {"--sheet", "500"}).output == answer + "\n" + sheet + "\n");
}
