// Blanks that were cut and never fed on, by the real program: in the month and in what the order cost alike.
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "tests/system/face.hpp"

using namespace flutebook::fixture;
using Json = nlohmann::ordered_json;

TEST_CASE("blanks cut and never fed on stand on the floor, in the month and in the order's cost alike") {
    PlantCopy plant;
    const auto ask = [&](const std::vector<std::string>& words) {
        const Ended ended = ask_at(plant.folder(), words);
        INFO(ended.errors);
        REQUIRE(ended.exit_code == 0);
        return ended.output;
    };
    const auto floor_kg = [&] {
        const Json month = Json::parse(ask({"month", "2026-10", "--json"}));
        const Json cost = Json::parse(ask({"order", "cost", "26-7", "--json"}));
        const double kg = month["floor_kg"]["close"];
        // To the gram of each row.
        CHECK(cost["mass_kg"]["actual"]["floor"].get<double>() == Approx(kg).margin(0.003));
        CHECK_FALSE(month["loss_kg"].contains("surplus"));
        return kg;
    };
    // Printed, cut four to the sheet, glued: 1276 sheets are 5104 blanks.
    static_cast<void>(ask({"quote", demo_request("R-1007"), "--save"}));
    static_cast<void>(ask({"order", "Q000001", "5000", "--as", "26-7"}));
    const auto web = plant.write("web.csv",
                                 "ref,date,shift,corrugator,order,metres,order_change_metres,good_sheets\n"
                                 "W1,2026-10-05,early,C2,26-7,747.6,20,1425\n");
    const auto machines = plant.write("machines.csv",
                                      "ref,date,shift,converter,order,fed,setup_sheets,rejected,good_boxes\n"
                                      "M1,2026-10-05,early,PR1,26-7,1425,20,64,\n"
                                      "M2,2026-10-05,early,DC2,26-7,1341,20,45,\n"
                                      "M3,2026-10-06,early,FG1,26-7,5051,40,61,4950\n");
    static_cast<void>(ask({"post", web, machines}));
    const double blank_kg = 0.1374 * 0.4039;
    CHECK(floor_kg() == Approx(53 * blank_kg).margin(0.003));
    const double surplus_kg =
        Json::parse(ask({"order", "cost", "26-7", "--json"}))["mass_kg"]["actual"]["loss"]["surplus"];
    CHECK(surplus_kg < 0.5);  // the knife's last row alone
}
