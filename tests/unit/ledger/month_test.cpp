// What a month holds: flows, balances, expected losses, counts, and shares by machine, shift, board and order.
#include "ledger/reading/month.hpp"

#include <catch2/catch.hpp>

#include "ledger/reading/entries.hpp"
#include "ledger/reading/entry_search.hpp"
#include "ledger/writing/close.hpp"
#include "ledger/writing/posting.hpp"
#include "ledger/writing/reversal.hpp"
#include "tests/unit/ledger/made_drafts.hpp"

using namespace flutebook;
using namespace flutebook::ledger;
using namespace flutebook::fixture;

namespace {

std::vector<std::string> lines_of(const std::vector<Flow>& flows) {
    std::vector<std::string> lines;
    for (const auto& flow : flows)
        lines.push_back(flow.from + ">" + flow.to + " " + flow.material + " " + flow.cause + " " +
                        std::to_string(flow.movements) + ": " + std::to_string(flow.mass.count()) + " g, " +
                        std::to_string(flow.money.ten_thousandths()));
    return lines;
}

std::vector<std::string> lines_of(const std::vector<Balance>& balances) {
    std::vector<std::string> lines;
    for (const auto& one : balances)
        lines.push_back(one.account + " " + one.material + ": " + std::to_string(one.mass.count()) + " g, " +
                        std::to_string(one.money.ten_thousandths()));
    return lines;
}

std::vector<std::string> lines_of(const std::vector<Share>& shares) {
    std::vector<std::string> lines;
    for (const auto& one : shares)
        lines.push_back(one.of + "|" + one.centre + " " + one.from + ">" + one.to + " " + one.cause + ": " +
                        std::to_string(one.mass.count()));
    return lines;
}

using Lines = std::vector<std::string>;

Store with_two_months() {
    auto store = Store::in_memory();
    auto second = corrugator_run("R2", day(2026, 10, 9), "500124");
    second.shift = "night";
    second.board = "C-160";
    const std::vector<Draft> drafts = {
        paper_issue("P1", day(2026, 9, 28), 1000, 660), paper_issue("P2", day(2026, 10, 2), 300, 200, "TL125"),
        corrugator_run("R1", day(2026, 10, 3), "500123"), second, paper_issue("P3", day(2026, 10, 9), -100, -66)};
    CHECK(post(store, drafts, "mara").receipt.posted == 5);
    return store;
}

}  // namespace

TEST_CASE("a month's flows are the sums of its movements, by their names") {
    const auto store = with_two_months();
    CHECK(lines_of(flows(store, month(2026, 9))) == Lines{"paper-store>C1 KL135  1: 1000000 g, 6600000"});
    CHECK(lines_of(flows(store, month(2026, 10))) ==
          Lines{"C1>floor board  2: 1800000 g, 0", "C1>loose-scrap board corrugator-run 2: 100000 g, 0",
                "C1>loose-scrap board side-trim 2: 60000 g, 0", "adhesive-store>C1 adhesive  2: 40000 g, 220000",
                "paper-store>C1 KL135  1: -100000 g, -660000", "paper-store>C1 TL125  1: 300000 g, 2000000"});
    CHECK(flows(store, month(2026, 8)).empty());
}

TEST_CASE("an account holds what came in less what went out before the month") {
    const auto store = with_two_months();
    CHECK(balances_before(store, month(2026, 9)).empty());
    CHECK(lines_of(balances_before(store, month(2026, 10))) ==
          Lines{"C1 KL135: 1000000 g, 6600000", "paper-store KL135: -1000000 g, -6600000"});
    CHECK(lines_of(balances_before(store, month(2026, 11))) ==
          Lines{"C1 KL135: 900000 g, 5940000", "C1 TL125: 300000 g, 2000000", "C1 adhesive: 40000 g, 220000",
                "C1 board: -1960000 g, 0", "adhesive-store adhesive: -40000 g, -220000", "floor board: 1800000 g, 0",
                "loose-scrap board: 160000 g, 0", "paper-store KL135: -900000 g, -5940000",
                "paper-store TL125: -300000 g, -2000000"});
}

TEST_CASE("entries are found by all that is given of them, and by nothing that is not") {
    const auto store = with_two_months();
    const auto refs = [&](const EntrySearch& search) {
        Lines lines;
        for (const auto& entry : find_entries(store, search).entries) lines.push_back(entry.ref);
        return lines;
    };
    EntrySearch search{month(2026, 10)};
    CHECK(refs(search) == Lines{"P2", "R1", "R2", "P3"});
    search.kind = "corrugator-run";
    CHECK(refs(search) == Lines{"R1", "R2"});
    search.shift = "night";
    CHECK(refs(search) == Lines{"R2"});
    search.order = "500123";
    CHECK(refs(search).empty());
    search.order = "no such order";
    CHECK(refs(search).empty());
}

TEST_CASE("balances are the same whether the months before were closed or not") {
    auto store = with_two_months();
    const auto before = lines_of(balances_before(store, month(2026, 11)));
    const auto opening = lines_of(balances_before(store, month(2026, 10)));
    static_cast<void>(close_month(store, {month(2026, 9), {}, {}, "", "mara"}));
    CHECK(lines_of(balances_before(store, month(2026, 10))) == opening);
    CHECK(lines_of(balances_before(store, month(2026, 11))) == before);
    static_cast<void>(close_month(store, {month(2026, 10), {}, {}, "", "mara"}));
    CHECK(lines_of(balances_before(store, month(2026, 10))) == opening);
    CHECK(lines_of(balances_before(store, month(2026, 11))) == before);
    CHECK(lines_of(balances_before(store, month(2027, 6))) == before);
}

TEST_CASE("expected losses stand by centre and cause") {
    const auto store = with_two_months();
    const auto losses = expected_losses(store, month(2026, 10));
    REQUIRE(losses.size() == 2);
    CHECK(losses[0].centre == "C1");
    CHECK(losses[0].cause == "corrugator-run");
    CHECK(losses[0].mass == Grams::of(32'000));
    CHECK(losses[1].cause == "side-trim");
    CHECK(losses[1].mass == Grams::of(56'000));
    CHECK(expected_losses(store, month(2026, 9)).empty());
}

TEST_CASE("a month is divided by shift, board, order and centre, and each division adds up to the whole") {
    const auto store = with_two_months();
    CHECK(lines_of(shares(store, month(2026, 10), Axis::shift)) ==
          Lines{"early|C1 paper-store>C1 : 200000", "late|C1 C1>floor : 900000",
                "late|C1 C1>loose-scrap corrugator-run: 50000", "late|C1 C1>loose-scrap side-trim: 30000",
                "late|C1 adhesive-store>C1 : 20000", "night|C1 C1>floor : 900000",
                "night|C1 C1>loose-scrap corrugator-run: 50000", "night|C1 C1>loose-scrap side-trim: 30000",
                "night|C1 adhesive-store>C1 : 20000"});
    CHECK(lines_of(shares(store, month(2026, 10), Axis::order))[0] == "|C1 paper-store>C1 : 200000");
    CHECK(lines_of(shares(store, month(2026, 10), Axis::order))[1] == "500123|C1 C1>floor : 900000");
    for (const auto axis : {Axis::centre, Axis::shift, Axis::board, Axis::order}) {
        Grams mass;
        std::int64_t movements = 0;
        for (const auto& share : shares(store, month(2026, 10), axis)) {
            mass += share.mass;
            movements += share.movements;
        }
        CHECK(mass == Grams::of(2'200'000));
        CHECK(movements == 10);
        Grams expected;
        for (const auto& share : expected_shares(store, month(2026, 10), axis)) expected += share.mass;
        CHECK(expected == Grams::of(88'000));
    }
    const auto by_board = expected_shares(store, month(2026, 10), Axis::board);
    REQUIRE(by_board.size() == 4);
    CHECK(by_board[0].of == "B-140");
    CHECK(by_board[2].of == "C-160");
    CHECK(by_board[2].cause == "corrugator-run");
}

TEST_CASE("months are listed that hold entries, earliest first") {
    const auto store = with_two_months();
    CHECK(months(store) == std::vector<Month>{month(2026, 9), month(2026, 10)});
    CHECK(months(Store::in_memory()).empty());
}

TEST_CASE("the months of all entries from a given one on are listed, independent of what was posted before") {
    auto store = with_two_months();
    const std::int64_t last = head(store)->entry;
    CHECK(months_from_entry(store, 1) == std::vector<Month>{month(2026, 9), month(2026, 10)});
    CHECK(months_from_entry(store, last).size() == 1);
    CHECK(months_from_entry(store, last + 1).empty());
}

TEST_CASE("counts stand in the order of their days") {
    auto store = Store::in_memory();
    auto later = floor_count("N1", day(2026, 10, 31), 700);
    auto opening = floor_count("N2", day(2026, 10, 1), 650);
    opening.count->value = Money::of_ten_thousandths(5);
    const std::vector<Draft> drafts = {later, opening, floor_count("N3", day(2026, 11, 30), 1)};
    static_cast<void>(post(store, drafts, "mara"));
    const auto found = counts(store, month(2026, 10));
    REQUIRE(found.size() == 2);
    CHECK(found[0].entry == 2);
    CHECK(found[0].date == day(2026, 10, 1));
    CHECK(found[0].count.value == Money::of_ten_thousandths(5));
    CHECK(found[1].count.mass == Grams::of(700'000));
    CHECK_FALSE(found[1].count.value);
    CHECK(counts_of(store, "floor").size() == 3);
    CHECK(counts_of(store, "C1").empty());
}

TEST_CASE("a count that was reversed within its month no longer counts; reversed later it still does in its own") {
    auto store = Store::in_memory();
    const std::vector<Draft> drafts = {floor_count("N1", day(2026, 10, 30), 700),
                                       floor_count("N2", day(2026, 10, 31), 650)};
    static_cast<void>(post(store, drafts, "mara"));
    static_cast<void>(reverse(store, {1, day(2026, 10, 31), "miscounted", "mara"}));
    REQUIRE(counts(store, month(2026, 10)).size() == 1);
    CHECK(counts(store, month(2026, 10))[0].entry == 2);
    static_cast<void>(reverse(store, {2, day(2026, 11, 3), "miscounted", "mara"}));
    CHECK(counts(store, month(2026, 10)).size() == 1);
    CHECK(counts_of(store, "floor").empty());
}

TEST_CASE("the last price of a paper is that of its latest issue up to the day, reversed ones left out") {
    auto store = Store::in_memory();
    const std::vector<Draft> drafts = {
        paper_issue("P1", day(2026, 10, 5), 1000, 660), paper_issue("P2", day(2026, 10, 9), 1000, 700),
        paper_issue("P3", day(2026, 10, 9), 500, 400),  paper_issue("P4", day(2026, 10, 2), 1000, 600),
        paper_issue("P5", day(2026, 10, 9), -100, -80), paper_issue("P6", day(2026, 10, 9), 900, 0)};
    static_cast<void>(post(store, drafts, "mara"));
    const auto last = [&](ledger::Date date) { return last_priced(store, "paper-store", "C1", "KL135", date); };
    CHECK_FALSE(last(day(2026, 10, 1)));
    CHECK(last(day(2026, 10, 4))->entry == 4);
    CHECK(last(day(2026, 10, 5))->entry == 1);
    CHECK(last(day(2026, 12, 5))->entry == 3);
    CHECK(last(day(2026, 12, 5))->money == Money::of_ten_thousandths(4'000'000));
    CHECK(last(day(2026, 12, 5))->mass == Grams::of(500'000));
    CHECK(last(day(2026, 12, 5))->date == day(2026, 10, 9));
    static_cast<void>(reverse(store, {3, day(2026, 10, 9), "wrong roll", "mara"}));
    static_cast<void>(reverse(store, {5, day(2026, 10, 9), "wrong roll", "mara"}));
    CHECK(last(day(2026, 12, 5))->entry == 2);
    CHECK_FALSE(last_priced(store, "paper-store", "C2", "KL135", day(2026, 12, 5)));
    CHECK_FALSE(last_priced(store, "paper-store", "C1", "KL200", day(2026, 12, 5)));
}

TEST_CASE("an account has moved by a day when something moved in or out of it that was not undone") {
    auto store = Store::in_memory();
    auto opening = floor_count("N1", day(2026, 10, 1), 650);
    opening.movements = {{"opening", "floor", "board", "", Grams::of(650'000), Money()}};
    const std::vector<Draft> drafts = {opening, corrugator_run("R1", day(2026, 10, 3), "500123"),
                                       corrugator_run("R2", day(2026, 11, 3), "500123")};
    static_cast<void>(post(store, drafts, "mara"));
    CHECK_FALSE(has_moved(store, "floor", day(2026, 10, 2), "opening"));
    CHECK(has_moved(store, "floor", day(2026, 10, 2), "another"));
    CHECK(has_moved(store, "floor", day(2026, 10, 3), "opening"));
    CHECK(has_moved(store, "floor", day(2027, 1, 1), "opening"));
    CHECK(has_moved(store, "C1", day(2026, 10, 3), "opening"));
    CHECK_FALSE(has_moved(store, "FG1", day(2026, 10, 3), "opening"));
    static_cast<void>(reverse(store, {2, day(2026, 10, 5), "wrong order", "mara"}));
    CHECK_FALSE(has_moved(store, "floor", day(2026, 10, 31), "opening"));
    CHECK(has_moved(store, "floor", day(2026, 11, 3), "opening"));
}

TEST_CASE("entries are found by their order and visited by their month") {
    auto store = with_two_months();
    static_cast<void>(reverse(store, {3, day(2026, 11, 1), "wrong order", "mara"}));
    const auto of_order = entries_of_order(store, "500123");
    REQUIRE(of_order.size() == 2);
    CHECK(of_order[0].number == 3);
    CHECK(of_order[0].reversed_by == 6);
    CHECK(of_order[1].reverses == 3);
    CHECK(entries_of_order(store, "999").empty());
    CHECK(entries_of_order(store, "").empty());
    std::vector<std::int64_t> visited;
    visit_entries(store, month(2026, 10), [&](const Entry& entry) {
        visited.push_back(entry.number);
        CHECK(find_entry(store, entry.number)->hash == entry.hash);
    });
    CHECK(visited == std::vector<std::int64_t>{2, 3, 4, 5});
}
