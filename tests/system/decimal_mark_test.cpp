// A plant whose people write a comma: they are shown one, and files for other programs have a point.
#include <catch2/catch.hpp>
#include <fstream>
#include <regex>
#include <sstream>

#include "tests/system/face.hpp"

using namespace flutebook::fixture;
using Catch::Matchers::Contains;

namespace {

std::string text_in(const std::string& file) {
    std::ostringstream text;
    text << std::ifstream(file, std::ios::binary).rdbuf();
    return text.str();
}

std::string with_commas(const std::string& text) {
    return std::regex_replace(text, std::regex(R"((\d)\.(\d))"), "$1,$2");
}

struct CommaPlant : PlantCopy {
    CommaPlant() { replace("plant.yaml", "units: metric", "decimal: comma\nunits: metric"); }
};

}  // namespace

TEST_CASE("where the plant says comma each number of a sheet has one, and no other sign of it differs") {
    const PlantCopy point;
    const CommaPlant comma;
    for (const char* number : {"R-1001", "R-1004", "R-1007"}) {
        CAPTURE(number);
        const Ended with_point = ask_at(point.folder(), {"quote", demo_request(number), "--sheet"});
        const Ended with_comma = ask_at(comma.folder(), {"quote", demo_request(number), "--sheet"});
        CHECK(with_comma.output != with_point.output);
        CHECK(with_comma.output == with_commas(with_point.output));
    }
}

TEST_CASE("pages and offers of a plant that says comma have it") {
    const CommaPlant plant;
    const std::string page = plant.folder() + "/page.html", offer = plant.folder() + "/offer.html";
    REQUIRE(ask_at(plant.folder(), {"quote", demo_request("R-1001"), "--html", page, "--offer", offer}).exit_code == 0);
    CHECK_THAT(text_in(page), Contains("2 102,05") && Contains("151,5 mm") && !Contains("2 102.05"));
    CHECK_THAT(text_in(offer), Contains("2 102,05") && Contains("901,56 EUR") && !Contains("2 102.05"));
}

TEST_CASE("documents and lists have a point whatever the plant says") {
    const PlantCopy point;
    CommaPlant comma;
    CHECK(ask_at(comma.folder(), {"quote", demo_request("R-1001"), "--json"}).output ==
          ask_at(point.folder(), {"quote", demo_request("R-1001"), "--json"}).output);
    const std::string list = comma.write(
        "list.csv", "request,style,length,width,height,board,quantity,margin\nL-1,0201,400,300,250.5,B-140,500,0.18\n");
    const std::string answer = comma.folder() + "/answer.csv";
    REQUIRE(ask_at(comma.folder(), {"quote", list, "-o", answer}).exit_code == 0);
    const std::string with_comma = text_in(answer);
    REQUIRE(ask_at(point.folder(), {"quote", list, "-o", answer, "--replace"}).exit_code == 0);
    CHECK(with_comma == text_in(answer));
}

TEST_CASE("a decimal mark that is neither is refused at its place") {
    PlantCopy plant;
    plant.replace("plant.yaml", "units: metric", "decimal: dot\nunits: metric");
    const Ended ended = ask_at(plant.folder(), {"quote", demo_request("R-1001")});
    CHECK(ended.exit_code == 3);
    CHECK_THAT(ended.errors, Contains("decimal:") && Contains("`dot`") && Contains("`comma`"));
}
