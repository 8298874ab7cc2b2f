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

TEST_CASE("a text that is no order record is told from one") {
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
}
