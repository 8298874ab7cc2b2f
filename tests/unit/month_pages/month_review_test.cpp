// A month as it is reviewed: nothing nets, parts come to their wholes, and it is beside the right months.
#include <sqlite3.h>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <string_view>

#include "host/month_answers/entry_answer.hpp"
#include "host/month_reports/month_report.hpp"
#include "host/render/text_report.hpp"
#include "host/services/closing/month.hpp"
#include "host/services/closing/review.hpp"
#include "host/services/posting/entries.hpp"
#include "host/services/posting/reverse.hpp"
#include "ledger/reading/entry_search.hpp"
#include "ledger/writing/close.hpp"
#include "tests/unit/month/month_bench.hpp"
#include "tests/unit/month_pages/reviewed_month.hpp"

using namespace flutebook;
using namespace flutebook::fixture;
using nlohmann::json;

namespace {

// How often a month's counts were asked for, which is done once each time that the month is worked out.
int counts_asked = 0;

int note_statement(unsigned /*event*/, void* /*context*/, void* statement, void* /*text*/) {
    const std::string_view sql = sqlite3_sql(static_cast<sqlite3_stmt*>(statement));
    const bool is_of_a_month =
        sql.find("FROM stock_count") != std::string_view::npos && sql.find("s.day BETWEEN") != std::string_view::npos;
    if (is_of_a_month) ++counts_asked;
    return 0;
}

int note_statements_of(sqlite3* books, const char** /*fault*/, const sqlite3_api_routines* /*routines*/) {
    return sqlite3_trace_v2(books, SQLITE_TRACE_STMT, note_statement, nullptr);
}

}  // namespace

TEST_CASE("A month whose close kept no account is calculated once for its review") {
    const auto noting = reinterpret_cast<void (*)()>(note_statements_of);
    sqlite3_auto_extension(noting);
    ReviewedMonth month;
    sqlite3_cancel_auto_extension(noting);
    static_cast<void>(ledger::close_month(month.bench.store, {month.bench.month, {}, {}, "", "mara"}));
    counts_asked = 0;
    CHECK(month.review().month.is_worked_out_again);
    CHECK(counts_asked == 1);
}

TEST_CASE("What was lost beyond the expected is not netted with what was lost less") {
    ReviewedMonth month;
    const json told = month.document();
    CHECK(told["beyond_expected_kg"] == 14.0);
    CHECK(told["below_expected_kg"] == 4.0);
    CHECK(told["lost_kg"].get<double>() - told["expected_kg"].get<double>() == Approx(10.0));
}

TEST_CASE("What is missing at one machine is not netted with what a count found at another") {
    MonthBench bench;
    bench.paper("C1", "KL135", 100, 60);
    bench.move("C1", "finished", "KL135", 95);
    bench.move("floor", "FG1", "board", 10);
    bench.move("FG1", "finished", "board", 12);
    const auto sides = month::unexplained_sides(bench.account());
    CHECK(sides.over.to_kg() == 5.0);
    CHECK(sides.under.to_kg() == 2.0);
}

TEST_CASE("The cash of both sides adds up to that of the whole excess") {
    ReviewedMonth month;
    const auto review = month.review();
    CHECK(review.beyond_value + review.below_value == month::excess_value(review.month.account, review.month.scrap));
}

TEST_CASE("The losses of machines by shift add up to those of the month, actual and expected") {
    ReviewedMonth month;
    const auto review = month.review();
    Grams actual, expected;
    for (const auto& machine : review.machines)
        for (const auto& part : machine.shifts) {
            actual += part.actual;
            expected += part.expected;
        }
    CHECK(actual == review.month.account.lost());
    CHECK(expected == review.month.account.expected());
}

TEST_CASE("Machines by month end with the month itself") {
    ReviewedMonth month;
    const auto review = month.review();
    Grams actual;
    for (const auto& machine : review.machines) actual += machine.months.back().actual;
    CHECK(actual == review.month.account.lost());
    CHECK(review.machines.front().months.size() == review.month.trend.size());
}

TEST_CASE("The places of a cause add up to its total, in mass and in cash") {
    ReviewedMonth month;
    const auto cause = services::cause_review(month.bench.plant, month.bench.store, month.bench.month, "side-trim");
    Grams actual;
    Money value;
    for (const auto& place : cause.places) actual += place.actual;
    for (const Money each : cause.excess_values) value += each;
    CHECK(actual == cause.actual);
    CHECK(cause.actual.to_kg() == 34.0);
    CHECK(value == cause.excess_value);
    CHECK(cause.places.size() == 2);
}

TEST_CASE("A cause that a month does not know has no places") {
    ReviewedMonth month;
    const auto cause = services::cause_review(month.bench.plant, month.bench.store, month.bench.month, "flood");
    CHECK(cause.places.empty());
    CHECK(cause.excess_value == Money());
}

TEST_CASE("The year to date sums the months of the year alone") {
    ReviewedMonth month;
    month.lose_in(month_of(2025, 12), 500);
    month.lose_in(month_of(2026, 9), 7);
    month.bench.month = month_of(2026, 10);
    const auto review = month.review();
    CHECK(review.to_date.months == 2);
    CHECK(review.to_date.lost.to_kg() == month.lost_kg + 7);
    REQUIRE(review.before);
    CHECK(review.before->lost().to_kg() == 7.0);
    CHECK_FALSE(review.last_year);
}

TEST_CASE("The same months of last year stand beside the year, and the same month a year ago") {
    ReviewedMonth month;
    month.lose_in(month_of(2025, 10), 11);
    month.lose_in(month_of(2025, 11), 500);
    month.bench.month = month_of(2026, 10);
    const auto review = month.review();
    REQUIRE(review.last_year);
    CHECK(review.last_year->lost.to_kg() == 11.0);
    REQUIRE(review.year_ago);
    CHECK(review.year_ago->lost().to_kg() == 11.0);
}

TEST_CASE("Orders stand by what their excess cost, the dearest first, without causes that are weighed") {
    ReviewedMonth month;
    const auto review = month.review();
    REQUIRE(review.orders.size() == 2);
    CHECK(review.orders[0].part == "4711");
    CHECK(review.orders[0].excess().to_kg() == 4.0);
    CHECK(review.orders[1].part == "4712");
    CHECK(review.orders[1].excess().to_kg() == -4.0);
}

TEST_CASE("Streams are what moved between two accounts, less what was moved back") {
    MonthBench bench;
    bench.paper("C1", "KL135", 100, 60);
    bench.paper("C1", "KL135", -30, -18);
    const auto review = services::month_review(bench.plant, bench.store, {bench.month, bench.today});
    REQUIRE(review.streams.size() == 1);
    CHECK(review.streams[0].mass.to_kg() == 70.0);
}

TEST_CASE("Sales stand by mill and grade, our weight beside what was paid") {
    MonthBench bench;
    bench.paper("C1", "KL135", 100, 60);
    bench.move("bale-yard", "mill:Northweir", "4.01.00", 50);
    bench.move("mill:Northweir", "revenue", "4.01.00", 48, 4.8);
    const auto review = services::month_review(bench.plant, bench.store, {bench.month, bench.today});
    REQUIRE(review.mills.size() == 1);
    CHECK(review.mills[0].mill == "Northweir");
    CHECK(review.mills[0].sent.to_kg() == 50.0);
    CHECK(review.mills[0].paid.to_kg() == 48.0);
    CHECK(review.mills[0].tickets == 1);
}

TEST_CASE("A list of entries has a page, and where the next one begins") {
    ReviewedMonth month;
    ledger::EntrySearch search{month.bench.month};
    search.limit = 2;
    const auto first = services::entry_list(month.bench.store, search);
    REQUIRE(first.found.entries.size() == 2);
    CHECK(first.found.has_more);
    search.after = first.found.entries.back().number;
    search.limit = 500;
    const auto rest = services::entry_list(month.bench.store, search);
    CHECK_FALSE(rest.found.has_more);
    CHECK(rest.found.entries.front().number == search.after + 1);
}

TEST_CASE("Entries are found by cause, centre, shift and order together, with the losses of that cause") {
    ReviewedMonth month;
    ledger::EntrySearch search{month.bench.month};
    search.cause = "side-trim";
    search.centre = "C1";
    search.shift = "night";
    const auto list = services::entry_list(month.bench.store, search);
    CHECK(list.lost.to_kg() == 14.0);
    CHECK(list.expected.to_kg() == 10.0);
    for (const auto& entry : list.found.entries) CHECK(entry.shift == "night");
}

TEST_CASE("A name that the ledger does not know finds no entry") {
    ReviewedMonth month;
    ledger::EntrySearch search{month.bench.month};
    search.order = "nobody's";
    CHECK(services::entry_list(month.bench.store, search).found.entries.empty());
}

TEST_CASE("An empty name finds the entries that name none") {
    ReviewedMonth month;
    ledger::EntrySearch search{month.bench.month};
    search.order = "";
    for (const auto& entry : services::entry_list(month.bench.store, search).found.entries) CHECK(entry.order.empty());
}

TEST_CASE("An entry comes with what undid it") {
    MonthBench bench;
    const auto number = bench.paper("C1", "KL135", 100, 60);
    static_cast<void>(services::reverse(bench.store, {number, "keyed twice", "mara", std::nullopt}));
    const auto answer = services::entry(bench.store, "EUR", number);
    REQUIRE(answer);
    REQUIRE(answer->counterpart);
    CHECK(answer->counterpart->draft.note == "keyed twice");
    CHECK_FALSE(services::entry(bench.store, "EUR", 999));
}

TEST_CASE("The list of months has the latest first, and says which are closed") {
    ReviewedMonth month;
    month.lose_in(month_of(2026, 11), 1);
    const auto list = services::month_list(month.bench.plant, month.bench.store);
    REQUIRE(list.months.size() == 2);
    CHECK(list.months.front().account.month == month_of(2026, 11));
    CHECK_FALSE(list.months.back().is_closed);
}

TEST_CASE("Orders of a month with very many movements are ranked only where that is asked for") {
    ReviewedMonth month;
    const auto& bench = month.bench;
    const auto review = services::month_review(bench.plant, bench.store, {bench.month, bench.today, 3});
    CHECK(review.orders.empty());
    CHECK(review.unranked_movements > 3);
    CHECK(json::parse(answers::month_review_document(review))["orders"].is_null());
}

TEST_CASE("A month leads to the next one in which something was posted") {
    ReviewedMonth month;
    CHECK_FALSE(month.review().next);
    month.lose_in(month_of(2026, 12), 1);
    month.bench.month = month_of(2026, 10);
    REQUIRE(month.review().next);
    CHECK(*month.review().next == month_of(2026, 12));
}

TEST_CASE("The shares of the causes in the account's table add up to that of all losses, as they are shown") {
    MonthBench bench;
    bench.paper("C1", "KL135", 1000, 640);
    // 0.3335 % each, 1.0005 % together.
    for (const char* cause : {"order-change", "rejects", "side-trim"}) bench.lose("C1", "KL135", cause, 3.335);
    const auto answer = services::month(bench.plant, bench.store,
                                        {bench.month, std::nullopt, services::MonthOptions::Trend::none, bench.today});
    const std::string text = render::to_text(month_reports::month_report(bench.plant, answer));
    const std::string losses = text.substr(text.find("Losses by cause"));
    const auto shown = [&](const char* share) { return losses.find(share) != std::string::npos; };
    CHECK(shown("0.34 %"));
    CHECK(shown("0.33 %"));
    CHECK(shown("1.00 %"));
}
