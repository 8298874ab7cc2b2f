// Answers as HTML files: the figures of the text, in one file, written whole or not at all.
#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <regex>
#include <sstream>

#include "tests/system/face.hpp"

using namespace flutebook::fixture;
using Catch::Matchers::Contains;

namespace {

std::string bytes_of(const std::string& file) {
    std::ostringstream text;
    text << std::ifstream(file, std::ios::binary).rdbuf();
    return text.str();
}

// Drawings are left out: text has none.
std::string without_drawings(std::string html) {
    const std::string opening = "<figure>", closing = "</figure>";
    for (auto at = html.find(opening); at != std::string::npos; at = html.find(opening, at))
        html.erase(at, html.find(closing, at) + closing.size() - at);
    return html;
}

// What a reader sees: the body without its tags and drawings.
std::string words_of(const std::string& html) {
    std::string text = without_drawings(html.substr(html.find("<main>")));
    text = std::regex_replace(text, std::regex("<[^>]*>"), "  ");
    for (const auto& [entity, sign] : std::vector<std::pair<std::string, std::string>>{
             {"&lt;", "<"}, {"&gt;", ">"}, {"&quot;", "\""}, {"&amp;", "&"}})
        text = std::regex_replace(text, std::regex(entity), sign);
    return text;
}

// All digits in their order: every figure, whatever stands between two of them.
std::string digits_of(const std::string& text) {
    std::string digits;
    std::copy_if(text.begin(), text.end(), std::back_inserter(digits), [](char c) { return c >= '0' && c <= '9'; });
    return digits;
}

std::size_t files_in(const std::string& folder) {
    return static_cast<std::size_t>(std::distance(std::filesystem::directory_iterator(folder), {}));
}

// Files under the name that they have until they are finished.
std::size_t unfinished_in(const std::string& folder) {
    std::size_t count = 0;
    for (const auto& entry : std::filesystem::directory_iterator(folder))
        if (entry.path().filename().string().find(".part") != std::string::npos) ++count;
    return count;
}

}  // namespace

TEST_CASE("the HTML of each demo request has the figures of its text, in the same order") {
    const PlantCopy plant;
    const std::string file = plant.folder() + "/answer.html";
    for (const std::string& request : all_demo_requests()) {
        CAPTURE(request);
        const Ended text = ask_at(plant.folder(), {"quote", request, "--sheet"});
        const Ended page = ask_at(plant.folder(), {"quote", request, "--html", file, "--replace"});
        CHECK(page.exit_code == text.exit_code);
        CHECK(page.output.empty());
        const std::string html = bytes_of(file);
        CHECK(digits_of(words_of(html)) == digits_of(text.output));
        CHECK(html.size() > 5000);
        CHECK(html.substr(html.size() - 8) == "</html>\n");
    }
}

TEST_CASE("the HTML of a quote draws the sheet and the web of each quantity that can be made") {
    const PlantCopy plant;
    const std::string file = plant.folder() + "/answer.html";
    REQUIRE(ask_at(plant.folder(), {"quote", demo_request("R-1001"), "--html", file}).exit_code == 0);
    const std::string html = bytes_of(file);
    CHECK_THAT(html, Contains("<b>Sheet: the blank itself</b>") &&
                         Contains("<title>side trim, 107 mm at each edge</title>") &&
                         Contains("<title>roll width: 2450 mm</title>"));
    REQUIRE(ask_at(plant.folder(), {"quote", demo_request("R-1004"), "--html", file, "--replace"}).exit_code == 0);
    CHECK_THAT(bytes_of(file), Contains("<title>cut out between blanks and at the edges</title>"));
}

TEST_CASE("the HTML of a quote draws its blank flat with its dimensions, and the box folded and half open") {
    const PlantCopy plant;
    const std::string file = plant.folder() + "/answer.html";
    REQUIRE(ask_at(plant.folder(), {"quote", demo_request("R-1001"), "--html", file}).exit_code == 0);
    const std::string html = bytes_of(file);
    CHECK_THAT(html,
               Contains("<b>Blank, flat</b>") && Contains("<b>Box, folded</b>") && Contains("<b>Box, half open</b>"));
    CHECK_THAT(html, Contains("<title>length: 1440 mm</title>") && Contains("<title>crease at 433 mm</title>"));
    REQUIRE(ask_at(plant.folder(), {"quote", demo_request("R-1006"), "--html", file, "--replace"}).exit_code == 0);
    CHECK_THAT(bytes_of(file), Contains("<b>Blank, flat</b>") && !Contains("<b>Box, folded</b>"));
}

TEST_CASE("several requests stand in one HTML file, the same bytes each time") {
    const PlantCopy plant;
    const std::string file = plant.folder() + "/answer.html";
    const std::vector<std::string> words = {"quote",    demo_request("R-1001"), demo_request("R-1007"), "--html", file,
                                            "--replace"};
    REQUIRE(ask_at(plant.folder(), words).exit_code == 0);
    const std::string first = bytes_of(file);
    CHECK_THAT(first, Contains("R-1001") && Contains("R-1007") && Contains("prefers-color-scheme: dark"));
    REQUIRE(ask_at(plant.folder(), words).exit_code == 0);
    CHECK(bytes_of(file) == first);
    CHECK(unfinished_in(plant.folder()) == 0);
}

TEST_CASE("a customer's name cannot put anything into the HTML file but itself") {
    PlantCopy plant;
    std::string request = bytes_of(demo_request("R-1001"));
    request = std::regex_replace(request, std::regex("customer: .*"), "customer: '<script>alert(1)</script>'");
    const std::string file = plant.folder() + "/answer.html";
    REQUIRE(ask_at(plant.folder(), {"quote", plant.write("hostile.yaml", request), "--html", file}).exit_code == 0);
    CHECK(bytes_of(file).find("<script") == std::string::npos);
    CHECK_THAT(bytes_of(file), Contains("&lt;script&gt;alert(1)&lt;/script&gt;"));
}

TEST_CASE("an HTML file that cannot be written stops the command in one line, before anything is saved") {
    const PlantCopy plant;
    const std::size_t files = files_in(plant.folder());
    const std::string nowhere = plant.folder() + "/none/answer.html";
    const Ended ended = ask_at(plant.folder(), {"quote", demo_request("R-1001"), "--save", "--html", nowhere});
    CHECK(ended.exit_code == 1);
    CHECK(ended.output.empty());
    REQUIRE(lines_of(ended.errors).size() == 1);
    CHECK_THAT(ended.errors,
               Contains("cannot be written: there is no folder") && Contains("; make it, or name another file"));
    CHECK(files_in(plant.folder()) == files);
    CHECK(ask({"quote", demo_request("R-1001"), "--html", "answer.txt"}).exit_code == 2);
}

TEST_CASE("a request that is refused leaves no unfinished HTML file") {
    const PlantCopy plant;
    const std::string file = plant.folder() + "/answer.html";
    const Ended ended = ask_at(plant.folder(), {"quote", demo_request("R-1009"), "--html", file});
    CHECK(ended.exit_code == 1);
    CHECK_THAT(bytes_of(file), Contains("no corrugator, roll and route can make this order; limits:"));
    CHECK(unfinished_in(plant.folder()) == 0);
}
