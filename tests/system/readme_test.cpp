// The README shows what the program prints, not what it once printed.
#include <catch2/catch.hpp>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include "tests/system/face.hpp"

using namespace flutebook::fixture;
using Catch::Matchers::Contains;

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

// The words of the commands of a block that call the program, without its name.
std::vector<std::vector<std::string>> commands_in(const std::string& block) {
    std::vector<std::vector<std::string>> result;
    std::istringstream lines(block);
    for (std::string line; std::getline(lines, line);) {
        std::istringstream words(line);
        std::string word;
        words >> word;
        REQUIRE(word == "flutebook");
        auto& command = result.emplace_back();
        while (words >> word) command.push_back(word);
    }
    return result;
}

}  // namespace

TEST_CASE("the README's own style is written, checked, drawn and quoted as the README says") {
    const std::string page = readme();
    PlantCopy plant;
    plant.write("styles.yaml", block_after(page, "This is a tray with a hole to carry it by"));
    (void)plant.write("R-2001.yaml", block_after(page, "The request is as any other"));
    auto commands = commands_in(block_after(page, "Then let the program fold it"));
    REQUIRE(commands.size() == 3);
    std::string all;
    for (std::vector<std::string>& command : commands) {
        for (std::string& word : command)
            if (word == "R-2001.yaml" || word == "carry-tray.svg") word = plant.folder() + "/" + word;
        const Ended ended = ask_at(plant.folder(), command);
        INFO(command[1] << ": " << ended.errors << ended.output);
        CHECK(ended.exit_code == 0);
        all += ended.output;
    }
    CHECK_THAT(all, Contains("folds") && !Contains("does not fold"));
    CHECK_THAT(all, Contains("carry-tray") && Contains("die-cutter") && Contains("R-2001"));
    std::ostringstream drawing;
    drawing << std::ifstream(plant.folder() + "/carry-tray.svg").rdbuf();
    CHECK_THAT(drawing.str(), Contains("Box, folded"));
    const Ended listed = ask_at(plant.folder(), {"style", "list"});
    CHECK_THAT(listed.output, Contains("our own construction"));
}

TEST_CASE("the short answer and the sheet in the README are what the program prints") {
    const std::string page = readme();
    const std::string answer = block_after(page, "prints the short answer:");
    CHECK(answer.size() > 1000);
    CHECK(quote_demo({demo_request("R-1001")}).output == answer + "\n");
    const std::string sheet = block_after(page, "`--sheet 500` that of 500:");
    CHECK(sheet.size() > 1000);
    CHECK(quote_demo({demo_request("R-1001")}, {"--sheet", "500"}).output == answer + "\n" + sheet + "\n");
}
