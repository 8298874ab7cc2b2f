// Pages of months, causes, entries and orders as text: their figures are the answer's, what people wrote stays text,
// forms are there for whoever may use them.
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <regex>
#include <set>
#include <string>

#include "host/month_pages/month_orders.hpp"
#include "host/month_pages/month_page.hpp"
#include "host/month_pages/month_rows.hpp"
#include "host/month_pages/month_text.hpp"
#include "host/services/closing/review.hpp"
#include "host/services/posting/entries.hpp"
#include "host/services/posting/reverse.hpp"
#include "tests/unit/month_pages/reviewed_month.hpp"

using namespace flutebook;
using namespace flutebook::fixture;
using nlohmann::json;
using pages::Role;

namespace {

bool holds(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

pages::Frame frame_of(Role role) {
    pages::Frame frame;
    frame.plant = "Brackenholt Board";
    frame.person = "mara";
    frame.role = role;
    frame.token = "the-token";
    return frame;
}

std::string page_of(const ReviewedMonth& month, Role role = Role::controller) {
    return pages::month_page(frame_of(role), month.bench.plant, month.review());
}

std::string kg(const json& value) {
    return pages::kg_text(Grams::of(std::llround(value.get<double>() * 1000)));
}

std::string signed_kg(const json& value) {
    return pages::difference_text(Grams::of(std::llround(value.get<double>() * 1000)));
}

}  // namespace

TEST_CASE("The figures of the month's page are those of the answer's document") {
    ReviewedMonth month;
    const std::string page = page_of(month);
    const json told = month.document();
    CHECK(holds(page, "<td class=\"num\">" + kg(told["lost_kg"]) + "</td>"));
    CHECK(holds(page, "<td class=\"num\">" + kg(told["expected_kg"]) + "</td>"));
    CHECK(holds(page, "<td class=\"num\">" + kg(told["year_to_date"]["beyond_expected_kg"]) + "</td>"));
    for (const json& machine : told["machines"])
        for (const json& part : machine["shifts"])
            if (part["actual_kg"] != 0.0) CHECK(holds(page, ">" + signed_kg(part["excess_kg"]) + "</a>"));
    for (const json& order : told["orders"]) CHECK(holds(page, ">" + signed_kg(order["excess_kg"]) + "</a>"));
}

TEST_CASE("The month in a sentence says both sides, neither netted with the other") {
    const std::string page = page_of(ReviewedMonth());
    CHECK(holds(page, "<b>14 kg</b> were lost beyond the expected in side-trim"));
    CHECK(holds(page, "4 kg less than expected in rejects"));
}

TEST_CASE("The plant's target stands beside what was lost, in the month and in the year, where it has one") {
    ReviewedMonth month;
    CHECK_FALSE(holds(page_of(month), "target"));
    CHECK(month.document()["waste_target"].is_null());
    month.bench.plant.waste_target = 0.095;
    const std::string page = page_of(month);
    CHECK(holds(page, "<small>target 9.50 %</small>"));
    CHECK(holds(page, "<td class=\"num\">9.50 %</td>"));
    CHECK(month.document()["waste_target"] == 0.095);
}

TEST_CASE("A month is kept as a sheet, as a workbook and as rows") {
    const std::string page = page_of(ReviewedMonth(), Role::reader);
    for (const char* ending : {".html", ".xlsx", ".csv"})
        CHECK(holds(page, std::string("href=\"/months/2026-10") + ending + "\""));
}

TEST_CASE("Losses stand by their excess, the greatest first") {
    const std::string page = page_of(ReviewedMonth());
    const std::string losses = page.substr(page.find("id=\"losses\""));
    CHECK(losses.find("causes/side-trim") < losses.find("causes/rejects"));
}

TEST_CASE("A figure of a month leads to its cause, a machine to its rows, an order to its cost") {
    const std::string page = page_of(ReviewedMonth());
    CHECK(holds(page, "href=\"/months/2026-10/causes/side-trim\""));
    CHECK(holds(page, "href=\"/entries?month=2026-10&amp;centre=C1&amp;shift=night\""));
    CHECK(holds(page, "href=\"/orders/4711/cost\""));
}

TEST_CASE("What people wrote is text on a month's page") {
    ReviewedMonth month;
    month.bench.order = "<script>alert(1)</script>";
    month.bench.lose("C1", "KL135", "side-trim", 3);
    month.bench.lose("C1", "KL135", "<i>\"cause", 3);
    const std::string page = page_of(month);
    CHECK_FALSE(holds(page, "<script>alert"));
    CHECK_FALSE(holds(page, "<i>"));
    CHECK(holds(page, "&lt;script&gt;alert(1)"));
}

TEST_CASE("A month in which nothing ran has a page that says so") {
    MonthBench bench;
    const auto review = services::month_review(bench.plant, bench.store, {bench.month, bench.today});
    const std::string page = pages::month_page(frame_of(Role::reader), bench.plant, review);
    CHECK(holds(page, "Nothing was issued and nothing was lost in October 2026"));
    CHECK(holds(page, "Nothing was lost in this month"));
    CHECK_FALSE(holds(page, "nan"));
}

TEST_CASE("A page of a month has no style and no script in its text, and one that is fetched for whoever posts") {
    const std::string page = page_of(ReviewedMonth());
    CHECK_FALSE(holds(page, "style="));
    CHECK_FALSE(holds(page, "<script>"));
    CHECK(holds(page, "<script type=\"module\" src=\"/assets/documents-"));
    CHECK_FALSE(holds(page_of(ReviewedMonth(), Role::reader), "<script"));
    CHECK_FALSE(holds(page, "<style"));
}

TEST_CASE("No two elements of a month's page have one id") {
    const std::string page = page_of(ReviewedMonth());
    static const std::regex id(" id=\"([^\"]*)\"");
    std::set<std::string> seen;
    for (std::sregex_iterator item(page.begin(), page.end(), id), end; item != end; ++item) {
        INFO((*item)[1]);
        CHECK(seen.insert((*item)[1]).second);
    }
}

TEST_CASE("A reader sees the conditions for closing, and no form") {
    const std::string page = page_of(ReviewedMonth(), Role::reader);
    CHECK(holds(page, "id=\"closing\""));
    CHECK_FALSE(holds(page, "<form"));
}

TEST_CASE("A controller closes by a form that carries the session's token") {
    const std::string page = page_of(ReviewedMonth());
    CHECK(holds(page,
                "<form class=\"act\" method=\"post\" action=\"/months/2026-10/closing\"><input type=\"hidden\" "
                "name=\"token\" value=\"the-token\">"));
}

TEST_CASE("The form asks for a reason where the month does not balance") {
    ReviewedMonth month;
    REQUIRE_FALSE(month.review().month.balances());
    CHECK(holds(page_of(month),
                "The reason why it does not balance</span><input name=\"why\" maxlength=\"2000\" required>"));
    month.bench.move("C1", "finished", "KL135", 66);
    REQUIRE(month.review().month.balances());
    CHECK_FALSE(holds(page_of(month), "name=\"why\" maxlength=\"2000\" required>"));
}

TEST_CASE("The form asks for empty months before it only where something stands in the way") {
    ReviewedMonth month;
    month.bench.move("C1", "finished", "KL135", 66);
    month.bench.count("floor", "board", 500);
    REQUIRE(month.review().month.close_waits_for.empty());
    CHECK_FALSE(holds(page_of(month), "empty_months"));
    month.bench.today = std::chrono::year(2026) / 10 / 20;
    CHECK(holds(page_of(month), "empty_months"));
}

TEST_CASE("A closed month shows its seal and no form that closes it") {
    ReviewedMonth month;
    month.bench.move("C1", "finished", "KL135", 66);
    month.bench.count("floor", "board", 500);
    const auto closed = month.bench.close("checked");
    const std::string page = page_of(month);
    CHECK(holds(page, closed.seal.head));
    CHECK_FALSE(holds(page, "/closing\""));
}

TEST_CASE("What a month waits for stands on the page that closes it") {
    ReviewedMonth month;
    month.bench.today = std::chrono::year(2026) / 10 / 20;
    const auto review = month.review();
    REQUIRE_FALSE(review.month.close_waits_for.empty());
    const std::string page = pages::month_closing_page(frame_of(Role::controller), review);
    CHECK(holds(page, "<li>"));
    CHECK_FALSE(holds(page, "The month is over, no stock"));
}

TEST_CASE("A cause's page leads from each place to its rows, and its cash adds up as it is shown") {
    ReviewedMonth month;
    const auto cause = services::cause_review(month.bench.plant, month.bench.store, month.bench.month, "side-trim");
    const std::string page = pages::month_cause_page(frame_of(Role::reader), cause);
    CHECK(holds(page, "/entries?month=2026-10&amp;cause=side-trim&amp;centre=C1&amp;shift=night"));
    CHECK(holds(page, "<td class=\"num\">34.000</td>"));
}

TEST_CASE("A list of rows leads to the next page, with what was looked for") {
    ReviewedMonth month;
    ledger::EntrySearch search{month.bench.month};
    search.centre = "C1";
    search.limit = 2;
    const std::string page =
        pages::entry_list_page(frame_of(Role::reader), services::entry_list(month.bench.store, search));
    CHECK(holds(page, "/entries?month=2026-10&amp;centre=C1&amp;after=2\" rel=\"next\""));
}

TEST_CASE("An entry's page has the row, what it moved, its hash, and a form that undoes it for a controller") {
    ReviewedMonth month;
    const auto answer = services::entry(month.bench.store, "EUR", 1);
    REQUIRE(answer);
    const std::string page = pages::entry_page(frame_of(Role::controller), *answer);
    CHECK(holds(page, answer->entry.hash));
    CHECK(holds(page, "<td class=\"num\">1 000.000</td>"));
    CHECK(holds(page, "action=\"/entries/1/reversal\""));
    CHECK_FALSE(holds(pages::entry_page(frame_of(Role::accountant), *answer), "<form"));
}

TEST_CASE("A row that was undone has no form that undoes it again") {
    MonthBench bench;
    const auto number = bench.paper("C1", "KL135", 100, 60);
    static_cast<void>(services::reverse(bench.store, {number, "keyed twice", "mara", std::nullopt}));
    const std::string page =
        pages::entry_page(frame_of(Role::controller), services::entry(bench.store, "EUR", number).value());
    CHECK_FALSE(holds(page, "<form"));
    CHECK(holds(page, "keyed twice"));
}

TEST_CASE("Amounts rounded to two places add up to their total") {
    const auto money = [](std::int64_t count) { return Money::of_ten_thousandths(count); };
    CHECK(pages::coins_of_parts({money(33), money(33), money(34)}, money(100)) ==
          std::vector<std::string>{"0.00", "0.00", "0.01"});
    CHECK(pages::coins_of_parts({money(-150), money(350)}, money(200)) == std::vector<std::string>{"-0.02", "0.04"});
}

TEST_CASE("Shares add up to that of the total") {
    const auto grams = [](std::int64_t count) { return Grams::of(count); };
    CHECK(pages::shares_of_parts({grams(1), grams(1), grams(1)}, grams(3), grams(3)) ==
          std::vector<std::string>{"33.34 %", "33.33 %", "33.33 %"});
    CHECK(pages::shares_of_parts({grams(1)}, grams(1), grams(0)) == std::vector<std::string>{"-"});
}

TEST_CASE("The list of months leads to each of them") {
    ReviewedMonth month;
    const std::string page =
        pages::month_list_page(frame_of(Role::reader), services::month_list(month.bench.plant, month.bench.store));
    CHECK(holds(page, "href=\"/months/2026-10\""));
    CHECK(holds(page, "<td class=\"num\">14.000</td>"));
}

TEST_CASE("An empty list of orders says how an order is taken") {
    CHECK(holds(pages::order_list_page(frame_of(Role::reader), {}), "No order was taken yet"));
}
