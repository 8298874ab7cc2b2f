// Paper, scrap, bales, tickets, costs and counts: what each row moves, and which are refused.
#include <catch2/catch.hpp>

#include "host/production/scrap.hpp"
#include "tests/unit/production/documents_bench.hpp"

using namespace flutebook;
using namespace flutebook::fixture;
using Texts = std::vector<std::string>;

TEST_CASE("paper is issued at its price of the day") {
    KnownBook book;
    const auto before = draft_of(paper_header, "P1,2026-08-31,early,C1,KL140,1250.5", book);
    REQUIRE(before.movements.size() == 1);
    const auto& movement = before.movements[0];
    CHECK(movement.from == "paper-store");
    CHECK(movement.to == "C1");
    CHECK(movement.material == "KL140");
    CHECK(movement.mass.count() == 1250500);
    CHECK(movement.money == Money::of(1250.5, 0.640));
    const auto after = draft_of(paper_header, "P1,2026-09-01,early,C1,KL140,1250.5", book);
    CHECK(after.movements[0].money == Money::of(1250.5, 0.664));
}

TEST_CASE("paper that comes back is worth what it was issued at, or else what a new roll costs") {
    KnownBook book;
    book.issue_prices["KL140"] = 0.6;
    const auto back = draft_of(paper_header, "P2,2026-10-01,late,C1,KL140,-200", book);
    CHECK(back.movements[0].mass.count() == -200000);
    CHECK(back.movements[0].money == Money::of_ten_thousandths(-1200000));
    const auto found = draft_of(paper_header, "P2,2026-10-01,late,C1,TL125,-100", book);
    CHECK(found.movements[0].money == Money::of_ten_thousandths(-544000));
}

TEST_CASE("paper is refused of a grade or at a machine that the plant lacks, and before it had a price") {
    KnownBook book;
    CHECK(objections_to(paper_header, "P1,2026-10-01,early,C9,KL141,100", book) ==
          Texts{"corrugator: found `C9`, which is no corrugator of the plant; expected one of `C1`, `C2`",
                "paper: found `KL141`, which is no paper of the plant; expected one of `KL140`, `TL125`, `SC127`, "
                "`WM105`, `WT135`"});
    CHECK(objections_to(paper_header, "P1,2025-12-31,early,C1,KL140,100", book) ==
          Texts{"date: found 2025-12-31, before `KL140` had a price; expected a day from its first price in "
                "papers.yaml on"});
}

TEST_CASE("scrap is weighed at a machine, on the floor, or off finished goods") {
    KnownBook book;
    const auto ends = draft_of(scrap_header, "W1,2026-10-01,early,C1,roll-ends,87.5", book);
    CHECK(moved_of(ends, "paper", "C1", "loose-scrap", "roll-ends") == 87500);
    const auto damage = draft_of(scrap_header, "W2,2026-10-01,early,floor,damage,40", book);
    CHECK(moved_of(damage, "board", "floor", "loose-scrap", "damage") == 40000);
    const auto returns = draft_of(scrap_header, "W3,2026-10-01,early,finished,returns,310", book);
    CHECK(moved_of(returns, "board", "finished", "loose-scrap", "returns") == 310000);
    const auto item = draft_of(scrap_header, "W4,2026-10-01,early,FG1,glue-fault-2,5", book);
    CHECK(moved_of(item, "board", "FG1", "loose-scrap", "glue-fault-2") == 5000);
    CHECK(item.expected.empty());
}

TEST_CASE("a cause that runs tell is refused on the scales") {
    KnownBook book;
    for (const std::string cause :
         {"side-trim", "order-change", "corrugator-run", "surplus", "setup", "rejects", "cut-out"}) {
        const auto objections = objections_to(scrap_header, "W1,2026-10-01,early,C1," + cause + ",10", book);
        REQUIRE(objections.size() == 1);
        CHECK(objections[0] == "cause: found `" + cause +
                                   "`; expected a cause that is weighed, such as "
                                   "roll-ends, damage or returns: this one is calculated from the runs");
    }
    CHECK(objections_to(scrap_header, "W1,2026-10-01,early,C1,Setup,10", book) ==
          Texts{"cause: found `Setup`; expected lower-case words joined by hyphens, such as roll-ends"});
    CHECK(objections_to(scrap_header, "W1,2026-10-01,early,C1,idle,10", book).size() == 1);
    CHECK(objections_to(scrap_header, "W1,2026-10-01,early,bale-yard,damage,-10", book) ==
          Texts{"kg: found `-10`; expected a number from 0 to 100000000"});
    CHECK(objections_to(scrap_header, "W1,2026-10-01,early,bale-yard,damage,10", book) ==
          Texts{"centre: found `bale-yard`, which is no machine, floor or finished goods of the plant; expected one of "
                "`C1`, `C2`, `PR1`, `DC1`, `FG1`, `FG2`, `SL1`, `ST1`, `HP1`, `HP2`, `floor`, `finished`"});
}

TEST_CASE("a bale goes from the loose scrap to the yard under its grade") {
    KnownBook book;
    const auto bale = draft_of(bale_header, "B1,2026-10-01,late,4.01.00,512", book);
    CHECK(moved_of(bale, "4.01.00", "loose-scrap", "bale-yard") == 512000);
    CHECK(objections_to(bale_header, "B1,2026-10-01,late,4.01,512", book) ==
          Texts{"grade: found `4.01`; expected a grade as EN 643 writes it, such as 4.01.00 (new shavings of "
                "corrugated board)"});
}

TEST_CASE("a ticket sends what we weighed and is paid for what the mill weighed, less water") {
    KnownBook book;
    const auto dry = draft_of(ticket_header, "T1,2026-10-09,Northweir,4.01.00,24150,24000,0.10,85", book);
    CHECK(moved_of(dry, "4.01.00", "bale-yard", "mill:Northweir") == 24150000);
    CHECK(moved_of(dry, "4.01.00", "mill:Northweir", "revenue") == 24000000);
    CHECK(dry.movements[1].money == Money::of_ten_thousandths(20400000));
    CHECK(dry.movements[0].money == Money());

    const auto wet = draft_of(ticket_header, "T2,2026-10-09,Saltmarsh,4.01.00,,24000,0.14,85", book);
    CHECK(moved(wet, "bale-yard", "mill:Saltmarsh") == 24000000);
    CHECK(moved(wet, "mill:Saltmarsh", "revenue") == 23520000);
    CHECK(wet.movements[1].money == Money::of_ten_thousandths(19992000));

    const auto short_form =
        draft_of("ref,date,mill,grade,kg,moisture,per_tonne", "T3,2026-10-09,Saltmarsh,4.01.00,24000,,85", book);
    CHECK(moved(short_form, "bale-yard", "mill:Saltmarsh") == 24000000);
    CHECK(moved(short_form, "mill:Saltmarsh", "revenue") == 24000000);
}

TEST_CASE("a mill that the plant does not know is refused") {
    KnownBook book;
    CHECK(objections_to(ticket_header, "T1,2026-10-09,Northwear,4.01.00,,24000,0.10,85", book) ==
          Texts{"mill: found `Northwear`, which is no mill of the plant; expected one of `Northweir`, `Saltmarsh`"});
}

TEST_CASE("a centre's cost of a month is money without mass") {
    KnownBook book;
    const auto cost = draft_of(cost_header, "E1,2026-10-31,C1,energy,18250.75", book);
    REQUIRE(cost.movements.size() == 1);
    CHECK(cost.movements[0].from == "costs");
    CHECK(cost.movements[0].to == "C1");
    CHECK(cost.movements[0].material == "energy");
    CHECK(cost.movements[0].mass == Grams());
    CHECK(cost.movements[0].money == Money::of_ten_thousandths(182507500));
    CHECK(draft_of(cost_header, "E2,2026-10-31,loose-scrap,waste-management,900", book).movements[0].to ==
          "loose-scrap");
    CHECK(objections_to(cost_header, "E3,2026-10-31,floor,material,1", book) ==
          Texts{"centre: found `floor`, which is no machine or baler (loose-scrap) of the plant; expected one of "
                "`C1`, `C2`, `PR1`, `DC1`, `FG1`, `FG2`, `SL1`, `ST1`, `HP1`, `HP2`, `loose-scrap`",
                "class: found `material`; expected energy, system or waste-management"});
}

TEST_CASE("a count that opens its account comes from opening, with its value") {
    KnownBook book;
    book.is_new = true;
    const auto count = draft_of(count_header, "Z1,2026-09-30,floor,,4200,2310.50", book);
    REQUIRE(count.count);
    CHECK(count.count->mass.count() == 4200000);
    CHECK(count.count->value == Money::of_ten_thousandths(23105000));
    CHECK(moved_of(count, "board", "opening", "floor") == 4200000);
    CHECK(count.movements[0].money == Money::of_ten_thousandths(23105000));
    const auto paper = draft_of(count_header, "Z2,2026-09-30,C1,KL140,800,", book);
    CHECK(moved_of(paper, "KL140", "opening", "C1") == 800000);
    const auto scrap = draft_of(count_header, "Z3,2026-09-30,loose-scrap,,1500,", book);
    CHECK(moved_of(scrap, "scrap", "opening", "loose-scrap") == 1500000);
}

TEST_CASE("any other count is a fact that moves nothing") {
    KnownBook book;
    const auto count = draft_of(count_header, "Z1,2026-10-31,floor,,4200,", book);
    REQUIRE(count.count);
    CHECK(count.count->account == "floor");
    CHECK(count.count->mass.count() == 4200000);
    CHECK_FALSE(count.count->value);
    CHECK(count.movements.empty());
    CHECK(objections_to(count_header, "Z1,2026-10-31,floor,,4200,10", book) ==
          Texts{"amount: found `10`; expected nothing: a count has a value only where it opens the account, and this "
                "one has rows up to that day"});
}

TEST_CASE("a count is refused below zero, of a border, and of a paper that was not named or not there") {
    KnownBook book;
    CHECK(objections_to(count_header, "Z1,2026-10-31,floor,,-1,", book) ==
          Texts{"kg: found `-1`; expected a number from 0 to 100000000"});
    CHECK(objections_to(count_header, "Z1,2026-10-31,finished,,1,", book) ==
          Texts{"account: found `finished`, which is no account that can be counted of the plant; expected one "
                "of `C1`, `C2`, `PR1`, `DC1`, `FG1`, `FG2`, `SL1`, `ST1`, `HP1`, `HP2`, `floor`, `loose-scrap`, "
                "`bale-yard`"});
    CHECK(objections_to(count_header, "Z1,2026-10-31,C1,,1,", book) ==
          Texts{"of: found nothing; expected the paper that was counted there"});
    CHECK(objections_to(count_header, "Z1,2026-10-31,FG1,KL140,1,", book) ==
          Texts{"of: found `KL140`; expected nothing: a paper is only named at a corrugator"});
}
