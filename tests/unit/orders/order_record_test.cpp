// An order's record: which step a machine stands for, and how the ledger keeps it.
#include <catch2/catch.hpp>

#include "host/orders/order_record_json.hpp"
#include "tests/unit/production/documents_bench.hpp"

using namespace flutebook;
using namespace flutebook::fixture;

TEST_CASE("a machine stands for the step that names it, else for the first of its kind") {
    auto order = long_order("1");
    CHECK(order.step_of("PR1") == 1U);
    CHECK(order.step_of("DC1") == 2U);
    CHECK(order.step_of("FG1") == 3U);
    CHECK(order.step_of("FG2") == 3U);  // not on the route, but a folder-gluer as FG1 is
    CHECK_FALSE(order.step_of("XX9"));

    order.route = {"FG1", "DC1", "FG2"};
    CHECK(order.step_of("FG2") == 3U);
    order.converters.push_back({"FG3", plant::Converter::Kind::folder_gluer, 0, 0});
    CHECK(order.step_of("FG3") == 1U);
    CHECK_FALSE(order.step_of("PR1"));
    CHECK_FALSE(sheet_order("2").step_of("FG1"));
}

TEST_CASE("an order knows what each machine is allowed, and nothing of others") {
    const auto order = box_order("1");
    REQUIRE(order.find_corrugator("C2") != nullptr);
    CHECK(order.find_corrugator("C2")->run_waste == 0.04);
    CHECK(order.find_corrugator("FG1") == nullptr);
    REQUIRE(order.find_converter("FG2") != nullptr);
    CHECK(order.find_converter("FG2")->setup_sheets == 20);
    CHECK(order.find_converter("C1") == nullptr);
}

TEST_CASE("a record reads back as it was written, to the last bit") {
    auto order = long_order("26-4711/b");
    order.customer = "Quoin \"&\" Söhne";
    order.style = "0201";
    order.grammage_gsm = 402.9370000000001;
    order.adhesive_rate = 1.0 / 3;
    const auto text = orders::to_json(order);
    const auto back = orders::order_record_of(text);
    REQUIRE(back);
    CHECK(orders::to_json(*back) == text);
    CHECK(back->customer == order.customer);
    CHECK(back->adhesive_rate == order.adhesive_rate);
    CHECK(back->grammage_gsm == order.grammage_gsm);
    CHECK(back->route == order.route);
    CHECK(back->parting == order.parting);
    CHECK(back->find_converter("DC1")->kind == plant::Converter::Kind::die_cutter);
    CHECK(back->plies[1].take_up == order.plies[1].take_up);
}

TEST_CASE("a record's keys keep their names and order, which saved orders rely on") {
    orders::OrderRecord order{};
    order.number = "7";
    order.quote = "Q000001";
    order.quantity = 500;
    order.customer = "Quoin";
    order.board = "B1";
    order.style = "outline";
    order.plies = {{"K125", 125, 1.5, 4}};
    order.grammage_gsm = 191.5;
    order.adhesive_gsm = 4;
    order.adhesive_rate = 0.75;
    order.corrugator = "C1";
    order.roll_width_mm = 2200;
    order.outs = 2;
    order.slit_mm = 1000;
    order.chop_mm = 800;
    order.sheet_area_m2 = 0.8;
    order.ups = 4;
    order.box_area_m2 = 0.125;
    order.route = {"DC1"};
    order.parting = 1;
    order.corrugators = {{"C1", 0.25, 0.5, 30}};
    order.converters = {{"DC1", plant::Converter::Kind::die_cutter, 0.125, 20}};
    CHECK(orders::to_json(order) ==
          R"({"number":"7","quote":"Q000001","quantity":500.0,"customer":"Quoin","board":"B1","style":"outline",)"
          R"("plies":[{"paper":"K125","grammage":125.0,"take_up":1.5,"adhesive":4.0}],"grammage":191.5,)"
          R"("adhesive":4.0,"adhesive_rate":0.75,"corrugator":"C1","roll_width_mm":2200.0,"outs":2.0,)"
          R"("slit_mm":1000.0,"chop_mm":800.0,"sheet_area_m2":0.8,"ups":4.0,"box_area_m2":0.125,"route":["DC1"],)"
          R"("parting":1,"corrugators":[{"code":"C1","run_waste":0.25,"roll_loss":0.5,"order_change_m":30.0}],)"
          R"("converters":[{"code":"DC1","kind":"die-cutter","run_waste":0.125,"setup_sheets":20.0}]})");
}

TEST_CASE("a text that is not an order record is refused") {
    const auto text = orders::to_json(box_order("1"));
    const auto changed = [&](const std::string& from, const std::string& to) {
        auto other = text;
        other.replace(other.find(from), from.size(), to);
        return other;
    };
    CHECK_FALSE(orders::order_record_of(""));
    CHECK_FALSE(orders::order_record_of("[1]"));
    CHECK_FALSE(orders::order_record_of(text.substr(0, text.size() - 1)));
    CHECK_FALSE(orders::order_record_of(changed("\"ups\"", "\"sup\"")));
    CHECK_FALSE(orders::order_record_of(changed("folder-gluer", "stapler")));
    CHECK_FALSE(orders::order_record_of(changed("\"outs\":3.0", "\"outs\":\"3\"")));
    CHECK_FALSE(orders::order_record_of(changed("\"route\":[", "\"route\":\"FG1\",\"rest\":[")));
}
