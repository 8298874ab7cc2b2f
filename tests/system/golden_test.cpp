// One answer with its whole cost sheets, compared to the byte with the one that was approved. tests/system/approve.sh
// shows what has changed and approves it.
#include <catch2/catch.hpp>
#include <fstream>
#include <sstream>

#include "tests/system/face.hpp"

using namespace flutebook::fixture;

namespace {

// The first line that differs, with its number: the whole pages would hide it.
std::string difference(const std::string& approved, const std::string& printed) {
    const std::vector<std::string> left = lines_of(approved);
    const std::vector<std::string> right = lines_of(printed);
    for (std::size_t i = 0; i < left.size() || i < right.size(); ++i) {
        const std::string was = i < left.size() ? left[i] : "(end)";
        const std::string is = i < right.size() ? right[i] : "(end)";
        if (was != is) return "line " + std::to_string(i + 1) + "\n  was " + was + "\n  is  " + is;
    }
    return approved == printed ? "" : "line ends";
}

}  // namespace

TEST_CASE("the cost sheet of an order printed, cut, folded and glued is the one that was approved") {
    std::ostringstream file;
    file << std::ifstream(FLUTEBOOK_SOURCE_DIR "/tests/system/golden/R-1007.txt").rdbuf();
    const std::string approved = file.str();
    const Ended ended = quote_demo({demo_request("R-1007")}, {"--sheet"});
    CHECK(ended.exit_code == 0);
    CHECK(approved.size() > 5000);
    CHECK(difference(approved, ended.output) == "");
}
