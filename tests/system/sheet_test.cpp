// The printed cost sheet: inside the page, in the plant's units, and every total the sum of what is printed above it.
#include <fmt/format.h>

#include <catch2/catch.hpp>
#include <map>
#include <nlohmann/json.hpp>
#include <regex>

#include "tests/system/face.hpp"
#include "tests/system/printed_sheet.hpp"

using namespace flutebook::fixture;
using Catch::Matchers::Contains;

namespace {

void check_page(const std::string& page) {
    CHECK(sheets_on(page) > 20);
    CHECK(faults_on(page) == std::vector<std::string>{});
}

}  // namespace

TEST_CASE("on every sheet what is printed adds up, inside 100 columns") {
    check_page(quote_demo(all_demo_requests(), {"--sheet"}).output);
}

TEST_CASE("the shares of a quote's masses come to 100 % of its total, and its rate of waste is of issued paper") {
    const Ended ended = quote_demo({demo_request("R-1001")}, {"--json"});
    const auto mass = nlohmann::json::parse(ended.output)["requests"][0]["quotes"][0]["mass_kg"];
    const double issued = mass["issued"], all = issued + mass["adhesive"].get<double>(), product = mass["product"];
    const std::string first = quote_demo({demo_request("R-1001")}, {"--sheet", "500"}).output;
    std::map<std::string, std::vector<double>> rows;
    for (const std::string& line : lines_of(first))
        for (const std::string row :
             {"  paper issued ", "  adhesive, dry ", "  in ", "  lost ", "  boxes shipped ", "  out "})
            if (line.rfind(row, 0) == 0 && numbers_in(line).size() == 2) rows[row] = numbers_in(line);
    CHECK(rows["  in "].at(1) == 100);
    CHECK(rows["  out "].at(1) == 100);
    CHECK(rows["  paper issued "].at(1) == Approx(100 * issued / all).margin(0.01));
    CHECK(rows["  adhesive, dry "].at(1) == Approx(100 - 100 * issued / all).margin(0.01));
    CHECK(rows["  boxes shipped "].at(1) == Approx(100 * product / all).margin(0.01));
    CHECK(rows["  lost "].at(1) == Approx(100 - 100 * product / all).margin(0.01));
    CHECK_THAT(first, Contains(fmt::format("waste  {:.2f} % of issued paper (of boxes shipped: {:.2f} %)",
                                           100 * (all - product) / issued, 100 * (all - product) / product)));
}

TEST_CASE("in us units what is printed adds up as well, inside 100 columns") {
    PlantCopy plant;
    plant.replace("plant.yaml", "units: metric", "units: us");
    std::vector<std::string> words = {"quote", "--sheet"};
    for (const std::string& file : all_demo_requests()) words.push_back(file);
    check_page(ask_at(plant.folder(), words).output);
}

TEST_CASE("a sheet with one figure changed does not add up") {
    const std::string page = quote_demo({demo_request("R-1007")}, {"--sheet"}).output;
    REQUIRE(faults_on(page).empty());
    for (const std::string row :
         {"  Side trim ", "    Ink ", "less the per-unit", "cost of waste", "  lost ", "  DC2 "}) {
        std::string changed = page;
        const std::size_t end = changed.find('\n', changed.find(row));
        const std::size_t digit = changed.find_last_of("0123456789", end);
        changed[digit] = changed[digit] == '7' ? '8' : '7';
        INFO(row);
        CHECK(!faults_on(changed).empty());
    }
    CHECK(faults_on(std::string(101, 'x') + "\n").size() == 1);
}

TEST_CASE("one price ladder comes before the sheets and has every quantity") {
    const Ended ended = quote_demo({demo_request("R-1001")}, {"--sheet"});
    std::vector<double> steps;
    bool is_ladder = false;
    for (const std::string& line : lines_of(ended.output)) {
        if (line == "Price ladder, EUR") {
            is_ladder = true;
        } else if (line.empty()) {
            is_ladder = false;
        } else if (is_ladder && !numbers_in(line).empty()) {
            steps.push_back(numbers_in(line)[0]);
        }
    }
    CHECK(steps == std::vector<double>{500, 1000, 5000});
    const std::string& page = ended.output;
    CHECK(page.find("Price ladder") < page.find("500 boxes, "));
    CHECK(page.find("Price ladder") == page.rfind("Price ladder"));
}

TEST_CASE("a plant that reads us units sees inches, feet, pounds and MSF, and no metric unit") {
    PlantCopy plant;
    plant.replace("plant.yaml", "units: metric", "units: us");
    const Ended ended = ask_at(plant.folder(), {"quote", demo_request("R-1011"), "--sheet"});
    CHECK(ended.exit_code == 0);
    CHECK_THAT(ended.output, Contains("inside 16 x 12 x 10 in") && Contains(" lb/MSF") && Contains(" ft ") &&
                                 Contains(" ft2 of box") && Contains("cost per MSF shipped") &&
                                 Contains("cost per short ton shipped"));
    const std::regex metric(R"(([0-9]|a) +(mm|m|m2|kg|g/m2|t km|tonne)\b)");
    std::smatch found;
    for (const std::string& line : lines_of(ended.output)) {
        if (std::regex_search(line, found, metric)) FAIL_CHECK(line);
    }
}

TEST_CASE("an order that fits nowhere is answered with each limit and the ways it stops") {
    const Ended ended = quote_demo({demo_request("R-1009")});
    CHECK(ended.exit_code == 1);
    CHECK_THAT(ended.output, Contains("100 boxes: no corrugator, roll and route can make this order; limits:") &&
                                 Contains("sheet length 6660 mm is above the 2400 mm of FG1\n      stops FG1"));
    for (const std::string& line : lines_of(ended.output)) CHECK(line.size() <= 100);
}

TEST_CASE("sheets that are sold as sheets are called so") {
    const Ended ended = quote_demo({demo_request("R-1006")}, {"--sheet"});
    CHECK_THAT(ended.output, Contains("sheets shipped") && Contains("a sheet weighs") && !Contains("boxes"));
}
