// Lists: a row an item, priced as a request of its own would be, in the order of the list.
#include <catch2/catch.hpp>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>
#include <string>
#include <vector>

#include "tests/system/face.hpp"
#include "tests/system/list_plant.hpp"

using namespace flutebook::fixture;
using Json = nlohmann::ordered_json;

namespace {

// What --json says of a list.
Json rows_of(const ListPlant& plant, const std::string& list, int exit_code = 0,
             const std::vector<std::string>& options = {}) {
    std::vector<std::string> words = {"quote", list, "--json"};
    words.insert(words.end(), options.begin(), options.end());
    const Ended ended = ask_at(plant.folder(), words);
    INFO(ended.errors);
    REQUIRE(ended.exit_code == exit_code);
    return Json::parse(ended.output)["rows"];
}

Json quote_of(const ListPlant& plant, const std::string& request) {
    const Ended ended = ask_at(plant.folder(), {"quote", plant.write("request.yaml", request), "--json"});
    INFO(ended.errors);
    REQUIRE(ended.exit_code == 0);
    return Json::parse(ended.output)["requests"][0]["quotes"][0];
}

double sum_of(const Json& parts) {
    double sum = 0;
    for (const Json& part : parts) sum += part.get<double>();
    return sum;
}

const std::string plain_header = "request,style,length,width,height,board,quantity,margin\n";

}  // namespace

TEST_CASE("each row of a list has the price of the same request in a file") {
    const ListPlant plant;
    const std::string list = plant.write(
        "list.csv",
        "request,date,style,length,width,height,area,board,quantity,margin,colours,route,consumables.coverage,"
        "tooling.rule_length,tooling.die_boxes\n"
        "A,2026-10-15,0201,400,300,250,,B-140,500,0.18,2,FG1,0.15,,\n"
        "B,2026-10-15,0110,800,600,,,B-140,2000,0.2,,,,,\n"
        "C,2026-10-15,outline,700,500,,0.3,B-140,3000,0.2,,DC1,,6,20000\n"
        "D,2026-10-15,0201,300,400,250,,B-140,500,0.18,,,,,\n");
    const Json rows = rows_of(plant, list);
    const std::string day = "date: 2026-10-15\nboard: B-140\n";
    const std::vector<std::string> requests = {
        "request: A\nstyle: \"0201\"\ninside: {length: 400, width: 300, height: 250}\nquantities: [500]\nmargin: "
        "0.18\ncolours: 2\nroute: [FG1]\nextras: {consumables: {coverage: 0.15}}\n",
        "request: B\nstyle: \"0110\"\ninside: {length: 800, width: 600}\nquantities: [2000]\nmargin: 0.2\n",
        "request: C\nstyle: outline\noutline: {length: 700, width: 500, area: 0.3}\nquantities: [3000]\nmargin: "
        "0.2\nroute: [DC1]\nextras: {tooling: {rule_length: 6, die_boxes: 20000}}\n",
        "request: D\nstyle: \"0201\"\ninside: {length: 300, width: 400, height: 250}\nquantities: [500]\nmargin: "
        "0.18\n"};
    REQUIRE(rows.size() == requests.size());
    for (std::size_t r = 0; r < requests.size(); ++r) {
        const Json quote = quote_of(plant, requests[r] + day);
        CHECK(rows[r]["price_per_thousand"] == quote["price_per_thousand"]);
        CHECK(rows[r]["cost_per_thousand"] == quote["cost_per_thousand"]);
        CHECK(sum_of(rows[r]["parts_per_thousand"]) == Approx(rows[r]["price_per_thousand"].get<double>()));
    }
    CHECK(rows[3]["warnings"][0]["text"].get<std::string>().find("length is below width") == 0);
}

TEST_CASE("a row of a list says what its price leaves out, as the request's own answer does") {
    const ListPlant plant;
    const std::string list = plant.write("list.csv",
                                         "request,date,style,length,width,height,board,quantity,margin,colours,"
                                         "tooling.plate_boxes,delivery.distance\n"
                                         "A,2026-10-15,0201,400,300,250,B-140,500,0.18,2,,\n"
                                         "B,2026-10-15,0201,300,400,250,B-140,500,0.18,2,,\n"
                                         "C,2026-10-15,0201,400,300,250,B-140,500,0.18,,,80\n");
    const Json rows = rows_of(plant, list);
    for (const auto& [row, size] :
         {std::pair(std::size_t{0}, "length: 400, width: 300"), std::pair(std::size_t{1}, "length: 300, width: 400")}) {
        const Json quote =
            quote_of(plant, std::string("request: A\ndate: 2026-10-15\nstyle: \"0201\"\ninside: {") + size +
                                ", height: 250}\nboard: B-140\nquantities: [500]\nmargin: 0.18\n" + "colours: 2\n");
        CHECK(!quote["not_in_price"].empty());
        CHECK(rows[row]["not_in_price"] == quote["not_in_price"]);
    }
    CHECK(rows[2]["not_in_price"] == Json::array());
    const std::string out = plant.folder() + "/out.csv";
    CHECK(ask_at(plant.folder(), {"quote", list, "-o", out}).exit_code == 0);
    const std::vector<std::string> lines = lines_of(plant.read(out));
    CHECK(lines[0].find("\"not_in_price\"") != std::string::npos);
    CHECK(lines[1].find("plates: tooling.plate_boxes, ") != std::string::npos);
    CHECK(lines[1].find("freight: delivery.distance") != std::string::npos);
    CHECK(lines[3].find("delivery.distance") == std::string::npos);
}

TEST_CASE("a refused row of a list keeps its place with its reason and stops no other row") {
    const ListPlant plant;
    const std::string list = plant.write("list.csv", plain_header +
                                                         "A,0201,400,300,250,B-140,500,0.18\n"
                                                         "B,0201,400,300,250,B-999,500,0.18\n"
                                                         "C,0201,400,300,250,B-140,500,0.18,9\n"
                                                         "D,0201,400,300,,B-140,500,0.18\n"
                                                         "E,0201,9000,9000,250,B-140,500,0.18\n"
                                                         "F,0201,400,300,250,B-140,500,0.18\n");
    const std::string out = plant.folder() + "/out.csv";
    const Ended ended = ask_at(plant.folder(), {"quote", list, "-o", out});
    CHECK(ended.exit_code == 1);
    const std::vector<std::string> lines = lines_of(plant.read(out));
    REQUIRE(lines.size() == 7);
    for (const auto& [line, word] :
         std::vector<std::pair<std::size_t, std::string>>{{2, "list.csv:3:20: board: unknown board: found `B-999`"},
                                                          {3, "list.csv:4:1: more cells than columns: found 9"},
                                                          {4, "inside.height: missing"},
                                                          {5, "it cannot be made"}}) {
        CHECK(lines[line].find(word) != std::string::npos);
        CHECK(ended.errors.find(word) != std::string::npos);
    }
    CHECK(lines[1].substr(lines[1].find("B-140")) == lines[6].substr(lines[6].find("B-140")));
}

TEST_CASE("errors in a row's old price are reported with the errors of its request") {
    const ListPlant plant;
    const std::string list = plant.write("list.csv",
                                         "request,style,length,width,height,board,quantity,margin,price\n"
                                         "A,0201,400,300,250,B-140,1 000,0.18,1 200\n");
    const Json errors = rows_of(plant, list, 1)[0]["errors"];
    REQUIRE(errors.size() == 2);
    CHECK(errors[0].get<std::string>().find("list.csv:2:37: price: not a number: found `1 200`") != std::string::npos);
    CHECK(errors[1].get<std::string>().find("not a number: found `1 000`") != std::string::npos);
}

TEST_CASE("a list with a wrong header is answered with the columns that are known") {
    const ListPlant plant;
    for (const std::string header :
         {"request,style,length,width,hight,board,quantity,margin", "request,style,length,width,height,board,quantity",
          "request,style,length,width,height,board,quantity,margin,varnish.coats"}) {
        const Ended ended =
            ask_at(plant.folder(), {"quote", plant.write("list.csv", header + "\nA,0201,1,1,1,B,1,0\n"), "--json"});
        CHECK(ended.exit_code == 1);
        CHECK(ended.output.empty());
        CHECK(ended.errors.find("known columns: request, customer, date, style, length") != std::string::npos);
        CHECK(ended.errors.find("delivery.distance") != std::string::npos);
    }
    const Ended twice =
        ask_at(plant.folder(), {"quote", plant.write("list.csv", plain_header.substr(0, 62) + ",board\n"), "--json"});
    CHECK(twice.exit_code == 1);
}

TEST_CASE("the difference from the old price is given by cost class if the day of the old price is known") {
    const ListPlant plant;
    const std::string list =
        plant.write("list.csv",
                    "request,date,style,length,width,height,board,quantity,margin,price,price_date\n"
                    "A,2026-10-15,0201,400,300,250,B-140,500,0.18,900,2026-02-01\n"
                    "B,2026-10-15,0201,400,300,250,B-140,500,0.18,900,\n"
                    "C,2026-10-15,0201,400,300,250,B-140,500,0.18,,\n"
                    "D,2026-10-15,0201,400,300,250,B-140,500,0.18,900,1990-01-01\n");
    const Json rows = rows_of(plant, list);
    CHECK(sum_of(rows[0]["change"]) == Approx(rows[0]["difference"].get<double>()).margin(1e-9));
    CHECK(rows[0]["change"]["material"].get<double>() > 0);  // paper rose in September
    CHECK(rows[0]["difference"].get<double>() == Approx(rows[0]["price_per_thousand"].get<double>() - 900));
    CHECK(rows[1].contains("difference"));
    CHECK(!rows[1].contains("change"));
    CHECK(!rows[2].contains("difference"));
    CHECK(!rows[3].contains("change"));
    CHECK(rows[3]["warnings"].dump().find("no reason for the difference") != std::string::npos);
}

TEST_CASE("a list gives the same bytes on one thread and on two, in the order of its rows") {
    const ListPlant plant;
    std::string text = plain_header;
    for (int i = 0; i < 1500; ++i)
        text += "R-" + std::to_string(i) + ",0201," + std::to_string(300 + i % 97) + ",250,200," +
                (i % 50 == 7 ? "nothing" : "B-140") + "," + std::to_string(100 + i) + ",0.2\n";
    const std::string list = plant.write("list.csv", text);
    const std::string one = plant.folder() + "/one.csv", two = plant.folder() + "/two.csv";
    CHECK(ask_at(plant.folder(), {"quote", list, "-o", one, "--threads", "1"}).exit_code == 1);
    CHECK(ask_at(plant.folder(), {"quote", list, "-o", two, "--threads", "2"}).exit_code == 1);
    const std::string answer = plant.read(one);
    CHECK(answer == plant.read(two));
    const std::vector<std::string> lines = lines_of(answer);
    REQUIRE(lines.size() == 1501);
    for (std::size_t i = 0; i < 1500; ++i) CHECK(lines[i + 1].find("\"R-" + std::to_string(i) + "\",") == 0);
}

TEST_CASE("the answer of a list is a list again, and replaces a file only on request") {
    const ListPlant plant;
    const std::string list = plant.write("list.csv", plain_header + "A,201,400,300,250,B-140,500,0.18\n");
    const std::string out = plant.folder() + "/out.csv";
    CHECK(ask_at(plant.folder(), {"quote", list, "-o", out}).exit_code == 0);
    const std::string first = plant.read(out);
    CHECK(ask_at(plant.folder(), {"quote", out, "-o", out}).exit_code == 1);
    CHECK(plant.read(out) == first);
    CHECK(ask_at(plant.folder(), {"quote", out, "-o", out, "--replace"}).exit_code == 0);
    CHECK(plant.read(out) == first);
    CHECK(ask_at(plant.folder(), {"quote", list}).exit_code == 2);
    CHECK(ask_at(plant.folder(), {"quote", list, "-o", out, "--save"}).exit_code == 2);
}

TEST_CASE("a list between semicolons has decimal commas, and none of its marks may part thousands") {
    const ListPlant plant;
    const std::string header = "request;style;length;width;height;board;quantity;margin;customer\n";
    const std::string list = plant.write("list.csv", header +
                                                         "A;0201;400,5;300;250;B-140;500;0,18;=1+1\n"
                                                         "B;0201;400;300;250;B-140;1.500;0,18;\n");
    const std::string out = plant.folder() + "/out.csv";
    const Ended ended = ask_at(plant.folder(), {"quote", list, "-o", out});
    CHECK(ended.exit_code == 1);
    CHECK(ended.errors.find("list.csv:3:26: quantity: a mark that may separate thousands: found `1.500`") !=
          std::string::npos);
    const std::string answer = plant.read(out);
    CHECK(answer.find("400,5;300;250;\"B-140\";500;0,18;\"'=1+1\";") != std::string::npos);
}

TEST_CASE("an answer that cannot be written leaves no file") {
    const ListPlant plant;
    const std::string list = plant.write("list.csv", plain_header + "A,0201,400,300,250,B-140,500,0.18\n");
    CHECK(ask_at(plant.folder(), {"quote", list, "-o", plant.folder() + "/none/out.csv"}).exit_code == 1);
    const std::string bad = plant.write("bad.csv", "request,nothing\n");
    CHECK(ask_at(plant.folder(), {"quote", bad, "-o", plant.folder() + "/out.csv"}).exit_code == 1);
    int files = 0;
    for (const auto& entry : std::filesystem::directory_iterator(plant.folder()))
        files += entry.path().filename().string().find("out.csv") == 0 ? 1 : 0;
    CHECK(files == 0);
}
