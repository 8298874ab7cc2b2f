// What runs on machines are worth: orders whose masses can be worked out by hand, then thousands that cannot.
#include <catch2/catch.hpp>
#include <map>

#include "host/plugin_check/generated_order.hpp"
#include "tests/support/property.hpp"
#include "tests/unit/production/documents_bench.hpp"

using namespace flutebook;
using namespace flutebook::fixture;

namespace {

struct Orders : KnownBook {
    Orders() {
        orders["4711"] = box_order("4711");
        orders["4712"] = long_order("4712");
        orders["4713"] = sheet_order("4713");
        orders["4714"] = hand_order("4714");
    }
};

}  // namespace

TEST_CASE("a corrugator's run splits all board that was combined into good sheets and causes") {
    Orders book;
    const auto draft = draft_of(corrugator_header, "R1,2026-10-01,early,C1,4711,1850,3,1000,25,1400", book);
    // 1000 m x 1.85 m x 500 g/m2 = 925 kg; adhesive 10 g/m2 at 0.60 a kg.
    CHECK(moved(draft, "adhesive-store", "C1") == 18500);
    CHECK(draft.movements.front().money == Money::of_ten_thousandths(111000));
    CHECK(moved(draft, "C1", "floor") == 840000);
    CHECK(moved(draft, "C1", "loose-scrap", "side-trim") == 25000);
    CHECK(moved(draft, "C1", "loose-scrap", "order-change") == 22500);
    CHECK(moved(draft, "C1", "loose-scrap", "corrugator-run") == 37500);
    // Each paper goes its own way by its share of the board: 140 / 500 of 840 kg.
    CHECK(moved_of(draft, "KL140", "C1", "floor") == 235200);
    CHECK(moved_of(draft, "SC127", "C1", "loose-scrap", "side-trim") == 11250);
    CHECK(moved_of(draft, "adhesive", "C1", "loose-scrap", "corrugator-run") == 750);
    CHECK(draft.kind == "corrugator-run");
    CHECK(draft.centre == "C1");
    CHECK(draft.order == "4711");
    CHECK(draft.board == "B-140");
    CHECK(draft.shift == "early");
}

TEST_CASE("a corrugator is expected to lose what its quote allows for the good sheets made") {
    Orders book;
    const auto draft = draft_of(own_layout_header, "R1,2026-10-01,early,C1,4711,1000,25,1400", book);
    // 467 cuts of 2 m are 934 m; 934 / 0.98 + 25 = 978.061 m of web are allowed. A sheet more than needed is cut.
    CHECK(expected(draft, "side-trim") == 24452);
    CHECK(expected(draft, "order-change") == 22500);
    CHECK(expected(draft, "corrugator-run") == 17755);
    // 978.061 m x 1.85 m x 490 g/m2 / 0.99, of which a hundredth.
    CHECK(expected(draft, "roll-ends") == 8956);
}

TEST_CASE("what is expected goes by the machine that ran and the order's own layout") {
    Orders book;
    // On C2, which may lose 4 % and 10 m a change, off another roll, two outs.
    const auto draft = draft_of(corrugator_header, "R1,2026-10-01,early,C2,4711,1700,2,800,30,700", book);
    CHECK(moved(draft, "C2", "loose-scrap", "side-trim") == 200000);
    CHECK(expected(draft, "order-change") == 9000);
    // 234 cuts of 2 m: 468 / 0.96 + 10 = 497.5 m, at the order's trim of 50 mm.
    CHECK(expected(draft, "side-trim") == 12438);
}

TEST_CASE("a row without order-change metres continues a run and is allowed no change") {
    Orders book;
    const auto draft = draft_of(own_layout_header, "R2,2026-10-01,late,C1,4711,1000,0,1400", book);
    CHECK(moved(draft, "C1", "loose-scrap", "order-change") == 0);
    CHECK(expected(draft, "order-change") == 0);
    CHECK(expected(draft, "side-trim") == 23827);
    CHECK(expected(draft, "corrugator-run") == 17755);
}

TEST_CASE("sheets that are sold as sheets leave the corrugator finished") {
    Orders book;
    const auto draft = draft_of(own_layout_header, "R1,2026-10-01,early,C1,4713,1000,25,1400", book);
    CHECK(moved(draft, "C1", "finished") == 840000);
    CHECK(moved(draft, "C1", "floor") == 0);
}

TEST_CASE("two orders on one web are two rows that share the roll") {
    Orders book;
    const auto one = draft_of(corrugator_header, "R1,2026-10-01,early,C1,4711,620,1,1000,25,480", book);
    const auto two = draft_of(corrugator_header, "R2,2026-10-01,early,C1,4712,1630,2,1000,25,1290", book);
    // Together the web of 2250 mm: 20 mm of trim with the one, 30 mm with the other.
    CHECK(moved(one, "C1", "loose-scrap", "side-trim") == 10000);
    CHECK(moved(two, "C1", "loose-scrap", "side-trim") == 15000);
}

TEST_CASE("a folder-gluer's run splits the sheets fed into boxes and causes") {
    Orders book;
    const auto draft = draft_of(converter_header, "G1,2026-10-02,early,FG1,4711,1400,40,10,1345", book);
    CHECK(moved(draft, "floor", "FG1") == 840000);
    CHECK(moved(draft, "FG1", "loose-scrap", "setup") == 24000);
    CHECK(moved(draft, "FG1", "loose-scrap", "rejects") == 6000);
    // 1350 sheets of 1.2 m2 hold a box of 1 m2 each; five of them did not come out.
    CHECK(moved(draft, "FG1", "loose-scrap", "cut-out") == 135000);
    CHECK(moved(draft, "FG1", "loose-scrap", "surplus") == 2500);
    CHECK(moved(draft, "FG1", "finished") == 672500);
    CHECK(expected(draft, "setup") == 24000);
    CHECK(expected(draft, "rejects") == 8400);  // ceil(1350 / 0.99) - 1350 = 14 sheets
    CHECK(expected(draft, "cut-out") == 135000);
    CHECK(expected(draft, "surplus") == 0);
}

TEST_CASE("another machine of the kind stands for its step, with its own allowances") {
    Orders book;
    const auto draft = draft_of(converter_header, "G1,2026-10-02,early,FG2,4711,1400,0,10,1390", book);
    CHECK(expected(draft, "setup") == 0);        // it continues a run
    CHECK(expected(draft, "rejects") == 93000);  // ceil(1390 / 0.9) - 1390 = 155 sheets
}

TEST_CASE("sheets go on to the die cutter, blanks from it, boxes from the last machine") {
    Orders book;
    const auto printed = draft_of(converter_header, "G1,2026-10-02,early,PR1,4712,500,50,5,", book);
    CHECK(moved(printed, "floor", "PR1") == 300000);
    CHECK(moved(printed, "PR1", "floor") == 267000);
    CHECK(moved(printed, "PR1", "loose-scrap", "cut-out") == 0);

    const auto cut = draft_of(converter_header, "G2,2026-10-02,early,DC1,4712,445,60,5,", book);
    CHECK(moved(cut, "floor", "DC1") == 267000);
    // Six blanks of 0.15 m2 to a sheet of 1.2 m2.
    CHECK(moved(cut, "DC1", "loose-scrap", "cut-out") == 57000);
    CHECK(moved(cut, "DC1", "floor") == 171000);
    CHECK(expected(cut, "cut-out") == 57000);

    const auto folded = draft_of(converter_header, "G3,2026-10-02,early,FG1,4712,2280,40,20,2200", book);
    CHECK(moved(folded, "floor", "FG1") == 171000);
    CHECK(moved(folded, "FG1", "loose-scrap", "setup") == 3000);
    CHECK(moved(folded, "FG1", "loose-scrap", "surplus") == 1500);
    CHECK(moved(folded, "FG1", "finished") == 165000);
}

TEST_CASE("a slitter parts blanks without waste, a stitcher and a hand station pass them on") {
    Orders book;
    const auto slit = draft_of(converter_header, "G1,2026-10-02,early,SL1,4714,104,4,0,", book);
    CHECK(moved(slit, "floor", "SL1") == 62400);
    CHECK(moved(slit, "SL1", "loose-scrap", "setup") == 2400);
    CHECK(moved(slit, "SL1", "loose-scrap", "cut-out") == 0);
    CHECK(moved(slit, "SL1", "floor") == 60000);  // 100 sheets, 800 blanks
    CHECK(expected(slit, "setup") == 2400);
    CHECK(expected(slit, "rejects") == 1800);  // ceil(100 / 0.98) - 100 = 3 sheets

    const auto stitched = draft_of(converter_header, "G2,2026-10-02,early,ST1,4714,800,2,8,", book);
    CHECK(moved(stitched, "floor", "ST1") == 60000);
    CHECK(moved(stitched, "ST1", "loose-scrap", "rejects") == 600);
    CHECK(moved(stitched, "ST1", "floor") == 59250);

    const auto packed = draft_of(converter_header, "G3,2026-10-02,early,HP1,4714,790,0,1,789", book);
    CHECK(moved(packed, "HP1", "loose-scrap", "rejects") == 75);
    CHECK(moved(packed, "HP1", "finished") == 59175);
    CHECK(expected(packed, "rejects") == 600);  // ceil(789 / 0.99) - 789 = 8 boxes
}

TEST_CASE("another hand station stands for the one of the route, no other kind does") {
    Orders book;
    const auto packed = draft_of(converter_header, "G3,2026-10-02,early,HP2,4714,790,0,1,789", book);
    CHECK(moved(packed, "HP2", "finished") == 59175);
    CHECK(expected(packed, "rejects") == 6600);  // ceil(789 / 0.9) - 789 = 88 boxes
    const auto texts = objections_to(converter_header, "G4,2026-10-02,early,DC1,4714,10,0,0,", book);
    REQUIRE(texts.size() == 1);
    CHECK_THAT(texts.front(), Catch::Contains("of a kind that the order's route has: SL1 > ST1 > HP1"));
}

TEST_CASE("runs that cannot have been are refused with what they hold") {
    Orders book;
    const auto web = [&](const std::string& row) { return objections_to(corrugator_header, row, book); };
    const auto machine = [&](const std::string& row) { return objections_to(converter_header, row, book); };
    using Texts = std::vector<std::string>;

    CHECK(web("R1,2026-10-01,early,C1,4711,1850,3,1000,25,1463") ==
          Texts{"good_sheets: found `1463`; expected no more than was fed: 1462 sheets after the order change"});
    CHECK(web("R1,2026-10-01,early,C1,4711,1850,3,1000,25,1462").empty());
    CHECK(web("R1,2026-10-01,early,C1,4711,1850,3,20,25,0") ==
          Texts{"order_change_metres: found `25`; expected no more than the 20 m of the run"});
    CHECK(web("R1,2026-10-01,early,C1,4711,1850,4,1000,25,1400") ==
          Texts{"outs: found `4`; expected no more than 1850 mm of roll holds: 4 x 600 mm of sheet do not fit on it"});
    CHECK(web("R1,2026-10-01,early,C2,4711,2450,3,1000,25,1400") ==
          Texts{"roll_width: found `2450`; expected at most 2100 mm, the widest roll that C2 takes"});
    CHECK(web("R1,2026-10-01,early,C1,4711,,3,1000,25,1400") ==
          Texts{"roll_width: found nothing; expected the roll width beside the outs, or neither"});
    CHECK(web("R1,2026-10-01,early,C1,9999,,,1000,25,1400") ==
          Texts{"order: found `9999`; expected the number of an order that was taken"});
    CHECK(web("R1,2026-10-01,noon,FG1,4711,,,1000,25,1400") ==
          Texts{"shift: found `noon`, which is no shift of the plant; expected one of `early`, `late`",
                "corrugator: found `FG1`, which is no corrugator of the plant; expected one of `C1`, `C2`"});

    CHECK(machine("G1,2026-10-02,early,FG1,4711,49,40,10,0") ==
          Texts{"fed: found `49`; expected at least the 50 sheets of setup and rejects"});
    CHECK(machine("G1,2026-10-02,early,FG1,4711,1400,40,10,1351") ==
          Texts{"good_boxes: found `1351`; expected no more than was fed: 1350 good pieces hold 1350"});
    CHECK(machine("G1,2026-10-02,early,FG1,4711,1400,40,10,") ==
          Texts{"good_boxes: found nothing; expected the good boxes of the last machine of the route"});
    CHECK(machine("G1,2026-10-02,early,PR1,4712,500,50,5,450") ==
          Texts{"good_boxes: found `450`; expected nothing: boxes are counted at the last machine of the route"});
    CHECK(machine("G1,2026-10-02,early,DC1,4711,500,50,5,450") ==
          Texts{"converter: found `DC1`; expected a machine of a kind that the order's route has: FG1"});
    CHECK(machine("G1,2026-10-02,early,FG1,4713,500,50,5,450") ==
          Texts{"converter: found `FG1`; expected no converter: the order is made by the corrugator alone"});
    CHECK(machine("G1,2026-10-02,early,FG3,4711,500,50,5,445") ==
          Texts{"converter: found `FG3`, which is no converter of the plant; expected one of `PR1`, `DC1`, `FG1`, "
                "`FG2`, `SL1`, `ST1`, `HP1`, `HP2`"});
}

TEST_CASE("an order that shared the web is allowed its share of the order change") {
    Orders book;
    // 25 m are allowed on 1.8 m of sheets at 500 g/m2: 22.5 kg; a quarter of the roll is allowed a quarter.
    const std::string run = "R1,2026-10-01,early,C1,4711,620,1,1000,25,400";
    CHECK(expected(draft_of(corrugator_header, run, book), "order-change") == 22500);
    const auto shared = draft_of(shared_web_header, run + ",2480", book);
    CHECK(expected(shared, "order-change") == 5625);
    CHECK(moved(shared, "C1", "loose-scrap", "order-change") ==
          moved(draft_of(corrugator_header, run, book), "C1", "loose-scrap", "order-change"));
    CHECK(expected(draft_of(shared_web_header, run + ",", book), "order-change") == 22500);
}

TEST_CASE("a web that is narrower than the order's part of it, or that the corrugator cannot take, is refused") {
    Orders book;
    const auto web = [&](const std::string& row) { return objections_to(shared_web_header, row, book); };
    using Texts = std::vector<std::string>;
    CHECK(web("R1,2026-10-01,early,C1,4711,2000,3,1000,25,400,1900") ==
          Texts{"web: found `1900`; expected at least the 2000 mm of it that the order has"});
    CHECK(web("R1,2026-10-01,early,C1,4711,620,1,1000,25,400,2600") ==
          Texts{"web: found `2600`; expected a roll of 1400 to 2500 mm, which C1 takes"});
    CHECK(web("R1,2026-10-01,early,C1,4711,620,1,1000,25,400,1300") ==
          Texts{"web: found `1300`; expected a roll of 1400 to 2500 mm, which C1 takes"});
    CHECK(web("R1,2026-10-01,early,C1,4711,,,1000,25,400,2480") ==
          Texts{"web: found `2480`; expected the roll width and the outs beside it: the share of the order"});
}

TEST_CASE("the order's own roll is refused on a corrugator that cannot take it") {
    Orders book;
    book.orders["4711"].roll_width_mm = 2450;
    CHECK(objections_to(own_layout_header, "R1,2026-10-01,early,C2,4711,1000,25,1400", book) ==
          std::vector<std::string>{"corrugator: found `C2`; expected a corrugator that takes the order's own roll of "
                                   "2450 mm: this one takes 1200 to 2100"});
}

TEST_CASE("a mass beyond any row is refused") {
    Orders book;
    book.orders["4711"].grammage_gsm = 5e6;
    CHECK(objections_to(own_layout_header, "R1,2026-10-01,early,C1,4711,1000000,25,1400", book) ==
          std::vector<std::string>{"metres: found `1000000`; expected a row of less than a million tonnes"});
}

namespace {

// Out of an account less into it, by material.
std::map<std::string, std::int64_t> left_at(const ledger::Draft& draft, const std::string& account) {
    std::map<std::string, std::int64_t> left;
    for (const auto& movement : draft.movements) {
        if (movement.to == account) left[movement.material] += movement.mass.count();
        if (movement.from == account) left[movement.material] -= movement.mass.count();
    }
    return left;
}

orders::OrderRecord any_order(plugin_check::Draws& draws) {
    auto order = draws.one_in(2) ? box_order("1") : long_order("1");
    order.grammage_gsm = 0;
    order.adhesive_gsm = draws.between(4, 22);
    for (auto& ply : order.plies) {
        ply.grammage_gsm = draws.between(70, 440);
        ply.take_up = draws.between(1, 1.6);
        order.grammage_gsm += ply.grammage_gsm * ply.take_up;
    }
    if (draws.one_in(3)) order.plies[2].paper = order.plies[0].paper;
    order.grammage_gsm += order.adhesive_gsm;
    order.slit_mm = draws.length_mm(150, 590);
    order.chop_mm = draws.length_mm(400, 4000);
    order.sheet_area_m2 = order.slit_mm * order.chop_mm / 1e6;
    order.box_area_m2 = order.sheet_area_m2 * draws.between(0.5, 1) / order.ups;
    return order;
}

std::string whole(double number) {
    return std::to_string(static_cast<std::int64_t>(number));
}

void check_corrugator(KnownBook& book, plugin_check::Draws& draws) {
    const auto& order = book.orders["1"];
    const double metres = draws.whole(1, 20000);
    const double change = draws.whole(0, 1) * draws.whole(0, std::min(40.0, metres));
    const double most = std::floor((metres - change) / order.chop_mm * 1000 * order.outs);
    const auto row =
        "R1,2026-10-01,early,C1,1," + whole(metres) + "," + whole(change) + "," + whole(draws.whole(0, most));
    const auto draft = draft_of(own_layout_header, row, book);
    const auto left = left_at(draft, "C1");
    RC_ASSERT(left.at("adhesive") == 0);
    std::int64_t all = 0;
    for (const auto& [material, grams] : left) all += grams;
    const double combined_g = metres * order.roll_width_mm / 1000 * (order.grammage_gsm - order.adhesive_gsm);
    RC_ASSERT(std::abs(static_cast<double>(-all) - combined_g) <= 1.0);
}

void check_converter(KnownBook& book, plugin_check::Draws& draws) {
    const auto& order = book.orders["1"];
    const std::string machine = draws.pick(order.route);
    const bool is_last = machine == order.route.back();
    const double fed = draws.whole(1, 50000);
    const double setup = draws.whole(0, std::min(fed, 100.0));
    const double rejected = draws.whole(0, fed - setup);
    const double holds = (fed - setup - rejected) * (order.route.size() == 1 ? order.ups : 1);
    const auto row = "G1,2026-10-01,early," + machine + ",1," + whole(fed) + "," + whole(setup) + "," +
                     whole(rejected) + "," + (is_last ? whole(draws.whole(0, holds)) : "");
    const auto draft = draft_of(converter_header, row, book);
    // Nothing stays in the machine, and no cause gives mass back.
    RC_ASSERT(left_at(draft, machine)["board"] == 0);
    for (const auto& movement : draft.movements) RC_ASSERT(movement.mass.count() > 0);
}

}  // namespace

TEST_CASE("whatever the order and the run, nothing is lost between fed and good plus causes") {
    CHECK(holds_for_seeds(2000, [](std::uint64_t seed) {
        plugin_check::Draws draws(seed);
        KnownBook book;
        book.orders["1"] = any_order(draws);
        check_corrugator(book, draws);
        check_converter(book, draws);
    }));
}
