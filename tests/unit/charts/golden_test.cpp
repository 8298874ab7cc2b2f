// Each form of chart, to the byte. What is drawn now lies in charts/ of the build tree, to be looked at in a browser;
// tests/system/approve.sh puts it in the place of what was approved.
#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "tests/unit/charts/chart_examples.hpp"

namespace flutebook::charts {

namespace {

std::string approved(const std::string& name) {
    std::ostringstream text;
    text << std::ifstream(FLUTEBOOK_SOURCE_DIR "/tests/unit/charts/golden/" + name + ".svg").rdbuf();
    return text.str();
}

}  // namespace

TEST_CASE("Each form of chart is drawn as it was approved") {
    const std::filesystem::path folder = FLUTEBOOK_BINARY_DIR "/charts";
    std::filesystem::create_directories(folder);
    for (const auto& [name, drawn] : drawn_forms()) {
        std::ofstream(folder / (name + ".svg")) << drawn;
        INFO(name);
        CHECK(drawn == approved(name));
    }
}

TEST_CASE("Each mark of each form has a name and a link of its own") {
    for (const auto& [name, drawn] : drawn_forms()) {
        INFO(name);
        CHECK(drawn.find("<a href=\"\"") == std::string::npos);
        CHECK(drawn.find("<title></title>") == std::string::npos);
        // A shape outside a link is the ground that marks stand on, or joins them.
        std::string outside = drawn;
        for (auto at = outside.find("<a "); at != std::string::npos; at = outside.find("<a "))
            outside.erase(at, outside.find("</a>", at) + 4 - at);
        for (const char* mark : {"<rect", "<circle", "class=\"flow", "class=\"bar", "class=\"lost"})
            CHECK(outside.find(mark) == std::string::npos);
    }
}

}  // namespace flutebook::charts
