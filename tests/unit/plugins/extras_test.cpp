// The models consumables, tooling and delivery: each line worked by hand, and silence where nothing is priced.
#include <catch2/catch.hpp>

#include "tests/support/model_bench.hpp"
#include "tests/unit/plugins/near.hpp"

using namespace flutebook::fixture;

namespace {

// 1000 boxes: printed in two colours on the die cutter, two a sheet of 0.5 m2, then folded and glued.
BenchRow order(Named settings) {
    return {3,
            4,
            {{"order.quantity", 1000},
             {"box.area", 0.2},
             {"box.joint", 0.25},
             {"blank.length", 1},
             {"blank.width", 0.3},
             {"blank.cut", 2.5},
             {"blank.crease", 1.5},
             {"sheet.ups", 2},
             {"board.grammage", 500},
             {"board.caliper", 0.004},
             {"step.parting", 1},
             {"step.kind", {0, 2, 3, 4}},
             {"step.colours", {0, 2, 0, 0}},
             {"step.piece_area", {0.5, 0.5, 0.2, 0}},
             {"run.fed", {0, 600, 1050, 1000}}},
            std::move(settings)};
}

BenchResult consumed(Named settings) {
    return ModelBench("consumables").evaluate(order(std::move(settings)));
}
BenchResult tooled(Named settings) {
    return ModelBench("tooling").evaluate(order(std::move(settings)));
}
BenchResult delivered(Named settings) {
    return ModelBench("delivery").evaluate(order(std::move(settings)));
}

}  // namespace

TEST_CASE("a plant that prices no consumables, tools or delivery is charged none") {
    CHECK(consumed({}).amount() == 0);
    CHECK(tooled({}).amount() == 0);
    CHECK(delivered({}).amount() == 0);
}

TEST_CASE("what the plant prices costs nothing where the request asks for none") {
    CHECK(consumed({{"ink_laydown", 5}, {"ink_price", 4}}).amount() == 0);
    CHECK(tooled({{"plate_price", 400}, {"die_board_price", 200}, {"rule_price", 12}}).amount() == 0);
    CHECK(delivered({{"freight_price", 0.12}, {"drop_price", 40}}).amount() == 0);
}

TEST_CASE("ink goes by pieces fed, covered area and colours at the step that prints") {
    const auto ink = consumed({{"coverage", 0.3}, {"ink_laydown", 5}, {"ink_price", 4}}).lines.at("ink");
    CHECK(ink.quantity.at(1) == near(0.9));  // 600 x 0.5 m2 x 2 colours x 0.3 x 5 g
    CHECK(ink.amount() == near(3.6));
    CHECK(ink.quantity.at(2) == 0);
}

TEST_CASE("each piece fed to the folder-gluer is glued along its joint unless the request says otherwise") {
    const auto result =
        consumed({{"glue_laydown", 8}, {"glue_price", 1.5}, {"tape_price", 0.02}, {"stitch_wire", 0.2}});
    CHECK(result.lines.at("joint.glue").quantity.at(2) == near(2.1));  // 1050 x 0.25 m x 8 g
    CHECK(result.lines.at("joint.glue").quantity.at(1) == 0);
    CHECK(result.amount() == near(3.15));
}

TEST_CASE("a joint is charged where it is closed: the last folder-gluer, stitcher or hand, else the last converter") {
    const Named glue{{"glue_laydown", 8}, {"glue_price", 1.5}};
    const auto glued_at = [&](const Numbers& kinds) {
        BenchRow row = order(glue);
        row.facts.insert_or_assign("step.kind", kinds);
        const auto quantity = ModelBench("consumables").evaluate(row).lines.at("joint.glue").quantity;
        CHECK((quantity.at(1) == 0) != (quantity.at(2) == 0));
        return quantity.at(1) > 0 ? 1 : 2;
    };
    CHECK(glued_at({0, 3, 3, 4}) == 2);
    CHECK(glued_at({0, 3, 2, 4}) == 1);
    CHECK(glued_at({0, 6, 1, 4}) == 1);
    CHECK(glued_at({0, 3, 7, 4}) == 2);
    CHECK(glued_at({0, 1, 2, 4}) == 2);
}

TEST_CASE("a stitched joint has a stitch at either end and one at every spacing between") {
    const Named wire{{"joint", 1},      {"stitch_spacing", 60}, {"stitch_wire", 0.2},
                     {"wire_price", 2}, {"glue_laydown", 8},    {"glue_price", 1.5}};
    const auto result = consumed(wire);
    CHECK(result.lines.at("joint.stitch").quantity.at(2) ==
          near(1.26));  // 250 / 60 = 5 gaps, 6 stitches x 0.2 g x 1050
    CHECK(result.amount() == near(2.52));
}

TEST_CASE("a taped joint takes its length in tape, with what the drawing adds") {
    const auto result = consumed({{"joint", 2}, {"joint_length", 50}, {"tape_price", 0.02}, {"glue_price", 1.5}});
    CHECK(result.lines.at("joint.tape").quantity.at(2) == near(315));  // 1050 x (0.25 + 0.05) m
    CHECK(result.amount() == near(6.3));
}

TEST_CASE("a box without a joint takes neither glue nor wire") {
    for (double joint : {0.0, 1.0, 2.0}) {
        BenchRow row = order({{"joint", joint}, {"glue_laydown", 8}, {"stitch_wire", 0.2}});
        row.facts.insert_or_assign("box.joint", 0);
        for (const auto& [name, line] : ModelBench("consumables").evaluate(row).lines)
            for (double quantity : line.quantity) CHECK(quantity == 0);
    }
}

TEST_CASE("the last bundle is strapped like a full one") {
    const auto result = consumed({{"bundle_boxes", 30}, {"strap_length", 1.8}, {"strap_price", 0.01}});
    CHECK(result.lines.at("strapping").quantity.at(3) == near(61.2));  // 1000 / 30 = 33.3, 34 bundles x 1.8 m
    CHECK(result.amount() == near(0.612));
}

TEST_CASE("plates are written off over the boxes they are to make") {
    const auto result = tooled({{"plate_price", 400}, {"plate_share", 0.8}, {"plate_boxes", 20000}});
    // two plates of 0.5 x 0.8 m2 at 400 = 320, over 20000 boxes
    CHECK(result.lines.at("plates").quantity.at(1) == 1000);
    CHECK(result.lines.at("plates").rate.at(1) == near(0.016));
    CHECK(result.amount() == near(16));
}

TEST_CASE("a die is written off at the die cutter, for every box on the sheet") {
    const auto result =
        tooled({{"die_board_price", 200}, {"rule_price", 12}, {"rule_length", 3}, {"die_boxes", 50000}});
    // 0.5 m2 x 200 + 2 boxes x 3 m x 12 = 172, over 50000 boxes
    CHECK(result.lines.at("die").rate.at(1) == near(172.0 / 50000));
    CHECK(result.amount() == near(3.44));
}

TEST_CASE("a die has the rule that its blank is cut and creased, unless the request gives the length") {
    const auto result = tooled({{"rule_price", 12}, {"die_boxes", 50000}});
    // 2 boxes x (2.5 + 1.5) m x 12 = 96, over 50000 boxes
    CHECK(result.lines.at("die").rate.at(1) == near(96.0 / 50000));
}

TEST_CASE("an order that no die cutter makes has no die") {
    BenchRow row = order({{"die_board_price", 200}, {"die_boxes", 50000}});
    row.facts.insert_or_assign("step.kind", Numbers{0, 1, 3, 4});
    CHECK(ModelBench("tooling").evaluate(row).amount() == 0);
}

TEST_CASE("only the die that parts the blanks is the order's own") {
    BenchRow row = order({{"die_board_price", 200}, {"die_boxes", 50000}});
    row.facts.insert_or_assign("step.kind", Numbers{0, 2, 2, 4});
    const auto die = ModelBench("tooling").evaluate(row).lines.at("die");
    CHECK(die.quantity.at(1) == 1000);
    CHECK(die.quantity.at(2) == 0);
}

TEST_CASE("pallets are as many as volume or mass asks for, whichever is more") {
    // 1000 boxes are 200 m2: 0.8 m3 of flat board, 100 kg
    const auto by_volume = delivered({{"pallet_volume", 0.3}, {"pallet_load", 60}, {"pallet_price", 9}});
    CHECK(by_volume.lines.at("pallets").quantity.at(3) == 3);  // 2.7 by volume, 1.7 by mass
    CHECK(by_volume.amount() == 27);
    const auto by_mass = delivered({{"pallet_volume", 2}, {"pallet_load", 60}, {"pallet_price", 9}});
    CHECK(by_mass.lines.at("pallets").quantity.at(3) == 2);
}

TEST_CASE("freight goes by distance and by mass, or by volume where the load is bulky") {
    const auto heavy = delivered({{"distance", 120}, {"freight_price", 0.15}, {"drop_price", 35}});
    CHECK(heavy.lines.at("freight").quantity.at(3) == near(12));  // 0.1 t x 120 km
    CHECK(heavy.amount() == near(36.8));                          // 12 x 0.15 + 35
    const auto bulky = delivered({{"distance", 120}, {"freight_price", 0.15}, {"freight_density", 250}});
    CHECK(bulky.lines.at("freight").quantity.at(3) == near(24));  // 0.8 m3 x 250 kg/m3 = 0.2 t x 120 km
}

TEST_CASE("an order needs as many lorries as its pallets or its mass fill, and none where a lorry has no limit") {
    const Named pallets = {{"pallet_volume", 0.3}, {"distance", 120}, {"drop_price", 35}, {"lorry_price", 1.5}};
    CHECK(delivered(pallets).provides.at("delivery.loads") == std::vector<double>{0});
    CHECK(delivered(pallets).amount() == 35);
    Named by_pallets = pallets;
    by_pallets.insert({"lorry_pallets", 2});
    const auto two = delivered(by_pallets);  // 3 pallets of 0.8 m3 in all
    CHECK(two.provides.at("delivery.loads") == std::vector<double>{2});
    CHECK(two.lines.at("freight.drop").amount() == 35);
    CHECK(two.lines.at("freight.further").amount() == 35);
    CHECK(two.lines.at("freight.lorry").amount() == near(360));  // 2 x 120 km x 1.5
    Named by_mass = by_pallets;
    by_mass.insert({"lorry_load", 30});
    CHECK(delivered(by_mass).provides.at("delivery.loads") == std::vector<double>{4});  // 100 kg over 30
}

TEST_CASE("an order in several deliveries has its pallets, its lorries and its drops by delivery") {
    const auto thrice = delivered({{"pallet_volume", 0.15},
                                   {"pallet_price", 9},
                                   {"lorry_pallets", 1},
                                   {"distance", 10},
                                   {"drop_price", 35},
                                   {"lorry_price", 1.5},
                                   {"deliveries", 3}});
    // 0.8 m3 fill 5.33 pallets: 1.78 a delivery, so 2 of them on 2 lorries each time.
    CHECK(thrice.provides.at("delivery.pallets") == std::vector<double>{6});
    CHECK(thrice.provides.at("delivery.loads") == std::vector<double>{6});
    CHECK(thrice.lines.at("pallets").amount() == 54);
    CHECK(thrice.lines.at("freight.drop").amount() == 105);
    CHECK(thrice.lines.at("freight.further").amount() == 105);
    CHECK(thrice.lines.at("freight.lorry").amount() == near(90));  // 6 x 10 km x 1.5
}

// A joined box of 0.5 x 0.3 m, folded, in bundles of 25 that are 0.2 m high, on a pallet of 1.2 x 0.8 m.
TEST_CASE("boxes are laid on a pallet in bundles, layer by layer, the way that holds most") {
    const Named pallet = {{"pallet_length", 1200},
                          {"pallet_width", 800},
                          {"stack_height", 1350},
                          {"bundle_boxes", 25},
                          {"pallet_price", 9.00}};
    const auto laid = delivered(pallet);
    // A row of 4 across 0.5 m of the pallet's width, and 2 along the 0.3 m that are left; one way alone holds 4.
    CHECK(laid.provides.at("delivery.layer_boxes") == std::vector<double>{6 * 25});
    CHECK(laid.provides.at("delivery.layers") == std::vector<double>{6});   // 1.35 / 0.2
    CHECK(laid.provides.at("delivery.pallets") == std::vector<double>{2});  // 1000 boxes, 900 to a pallet
    CHECK(laid.lines.at("pallets").amount() == 18);
    Named light = pallet;
    light.insert({"pallet_load", 32});  // a layer is 15 kg, so two of them
    CHECK(delivered(light).provides.at("delivery.layers") == std::vector<double>{2});
    CHECK(delivered(light).provides.at("delivery.pallets") == std::vector<double>{4});
    Named thrice = pallet;
    thrice.insert({"deliveries", 3});
    CHECK(delivered(thrice).provides.at("delivery.pallets") == std::vector<double>{3});
}

TEST_CASE("bundles lie along a pallet beside others across it where that holds more") {
    // 5 x 4 units on 9 x 8: 2 either way alone, 3 with one column along and one across.
    BenchRow row = order({{"pallet_length", 900}, {"pallet_width", 800}, {"stack_height", 100}});
    row.facts.insert_or_assign("box.joint", 0);
    row.facts.insert_or_assign("blank.length", 0.5);
    row.facts.insert_or_assign("blank.width", 0.4);
    const auto laid = ModelBench("delivery").evaluate(row);
    CHECK(laid.provides.at("delivery.layer_boxes") == std::vector<double>{3});
    CHECK(laid.provides.at("delivery.layers") == std::vector<double>{25});  // 100 mm of boards of 4 mm
}

TEST_CASE("a box that is larger than the pallet lies on it alone, and one that is thicker in one layer") {
    const auto laid = delivered({{"pallet_length", 400}, {"pallet_width", 300}, {"stack_height", 5}});
    CHECK(laid.provides.at("delivery.layer_boxes") == std::vector<double>{1});
    CHECK(laid.provides.at("delivery.layers") == std::vector<double>{1});
    CHECK(laid.provides.at("delivery.pallets") == std::vector<double>{1000});
}

TEST_CASE("a plant that gives a part of a pallet's size has no pattern") {
    for (const char* missing : {"pallet_length", "pallet_width", "stack_height"}) {
        Named pallet = {{"pallet_length", 1200}, {"pallet_width", 800}, {"stack_height", 1350}};
        pallet.erase(missing);
        const auto laid = delivered(pallet);
        CHECK(laid.provides.at("delivery.layer_boxes") == std::vector<double>{0});
        CHECK(laid.provides.at("delivery.layers") == std::vector<double>{0});
        CHECK(laid.provides.at("delivery.pallets") == std::vector<double>{0});
    }
}

TEST_CASE("work outside is charged at dispatch, by the order and by the thousand") {
    const auto worked = [](Named settings) { return ModelBench("outside-work").evaluate(order(std::move(settings))); };
    CHECK(worked({}).amount() == 0);
    const auto both = worked({{"order_price", 120}, {"thousand_price", 4.5}});  // 1000 boxes
    CHECK(both.lines.at("outside.order").quantity.at(3) == 1);
    CHECK(both.lines.at("outside.order").amount() == 120);
    CHECK(both.lines.at("outside.thousand").amount() == near(4.5));
    CHECK(both.lines.at("outside.thousand").quantity.at(2) == 0);
}

TEST_CASE(
    "tools without a number of boxes provide what is to be invoiced apart, and nothing where they are written off") {
    const Named prices = {{"plate_price", 400}, {"plate_share", 0.4}, {"die_board_price", 200}, {"rule_price", 12}};
    const auto apart = tooled(prices);
    CHECK(apart.provides.at("plates.invoiced").at(0) == near(2 * 0.5 * 0.4 * 400));
    CHECK(apart.provides.at("die.invoiced").at(0) == near(0.5 * 200 + 2 * 4 * 12));
    Named written_off = prices;
    written_off.insert({{"plate_boxes", 10000}, {"die_boxes", 50000}});
    CHECK(tooled(written_off).provides.at("plates.invoiced") == std::vector<double>{0});
    CHECK(tooled(written_off).provides.at("die.invoiced") == std::vector<double>{0});
}
