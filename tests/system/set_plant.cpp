#include "tests/system/set_plant.hpp"

#include <fmt/format.h>

#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <map>
#include <sstream>

namespace flutebook::fixture {

namespace {

const char* const styles = R"(styles:
  TRAY-SET:
    title: Tray, lid and two pads
    note: made for a test
    pieces:
      tray:
        made_by: die-cutter
        along:  [H, L, H]
        across: [H, B, H]
        map:
          - .    n    .
          - .    --   .
          - w |  c  | e
          - .    --   .
          - .    s    .
        fold: [w e n s]
        inside: {L: [w, e], B: [n, s], H: [c, rim]}
        cover: {top: 0}
      lid: {made_by: die-cutter, along: [L + 40], across: [B + 40]}
      pad: {count: 2, along: [L], across: [B]}
)";

const char* const web_header = "ref,date,shift,corrugator,order,metres,order_change_metres,good_sheets\n";
const char* const machine_header = "ref,date,shift,converter,order,fed,setup_sheets,rejected,good_boxes\n";

// As the demo plant has them.
const std::map<std::string, double> order_change_m = {{"C1", 25}, {"C2", 12}};
const std::map<std::string, double> setup_sheets = {{"DC1", 60}, {"DC2", 45}};

}  // namespace

SetPlant::SetPlant() {
    write("styles.yaml", styles);
}

SetPlant::Json SetPlant::document(const std::vector<std::string>& words) const {
    const Ended ended = ask(words);
    INFO(ended.errors);
    REQUIRE(ended.exit_code == 0);
    return Json::parse(ended.output);
}

std::string SetPlant::write_request(const std::string& number, const std::string& quantities,
                                    const std::string& inside) {
    return write(number + ".yaml", fmt::format("request: {}\ncustomer: Ashlar Tiles\ndate: 2026-10-15\n"
                                               "style: TRAY-SET\ninside: {}\nboard: B-140\nquantities: [{}]\n"
                                               "margin: 0.18\n",
                                               number, inside, quantities));
}

void SetPlant::charge_least(const std::string& least) {
    replace("plugins.yaml", "  - setup: {}\n", "  - setup: {}\n  - least_charge: {least: " + least + "}\n");
    std::filesystem::create_directories(folder() + "/plugins");
    std::filesystem::copy_file(FLUTEBOOK_LEAST_CHARGE, folder() + "/plugins/least_charge.so",
                               std::filesystem::copy_options::overwrite_existing);
}

void SetPlant::produce(const std::string& order, const Json& quote, double more_rejects) {
    const std::string corrugator = quote.at("corrugator");
    std::string web = web_header;
    web += fmt::format("{0}-W,2026-10-15,early,{1},{0},{2},{3},{4}\n", order, corrugator,
                       quote.at("web_length_m").get<double>(), order_change_m.at(corrugator),
                       quote.at("good").at(0).get<double>());
    std::vector<std::string> words = {"post", write("web.csv", web)};
    if (!quote.at("route").empty()) {
        const std::string converter = quote.at("route").at(0);
        const double setup = setup_sheets.at(converter);
        const double fed = quote.at("fed").at(1);
        const double good = quote.at("good").at(1);
        const double rejected = fed - setup - good + more_rejects;
        const double ups = quote.at("ups");
        const double boxes = quote.at("quantity").get<double>() - more_rejects * ups;
        std::string rows = machine_header;
        rows += fmt::format("{0}-M,2026-10-15,late,{1},{0},{2},{3},{4},{5}\n", order, converter, fed, setup, rejected,
                            boxes);
        words.push_back(write("machines.csv", rows));
    }
    const Ended ended = ask(words);
    INFO(ended.errors);
    REQUIRE(ended.exit_code == 0);
}

}  // namespace flutebook::fixture
