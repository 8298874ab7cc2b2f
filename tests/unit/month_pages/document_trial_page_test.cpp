// A production document before it is posted, as a page: what can be posted has a form, what cannot has its reasons.
#include <catch2/catch.hpp>
#include <chrono>

#include "host/month_pages/documents_page.hpp"
#include "host/month_pages/month_trial.hpp"
#include "tests/support/small_plant.hpp"

using namespace flutebook;

namespace {

bool page_holds(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

answers::DocumentTrial tried() {
    answers::DocumentTrial trial;
    trial.file = "runs.csv";
    trial.heads = {"ref", "kg"};
    trial.rows = {{2, {"R-1", "12"}, {}, {}}, {3, {"<b>R-2", "x"}, {"kg: found `x`; expected a number"}, {}}};
    trial.all_rows = 2;
    return trial;
}

std::string trial_page(const answers::DocumentTrial& trial) {
    pages::Frame frame;
    frame.role = pages::Role::controller;
    frame.token = "the-token";
    return pages::document_trial_page(frame, fixture::small_plant(), trial, "ab12", "ref,kg\nR-1,12\n</textarea>");
}

}  // namespace

TEST_CASE("A refused document has each reason below its row, and nothing to post it with") {
    const std::string page = trial_page(tried());
    CHECK(page_holds(page, "1 of 2 rows refused, so none is posted"));
    CHECK(page.find("&lt;b&gt;R-2") < page.find("kg: found `x`; expected a number"));
    CHECK_FALSE(page_holds(page, "/documents/ab12"));
}

TEST_CASE("A refused document can be corrected on its page, and its text stays text") {
    const std::string page = trial_page(tried());
    CHECK(page_holds(page, "ref,kg\nR-1,12\n&lt;/textarea&gt;</textarea>"));
}

TEST_CASE("A document that can be posted has a form that posts this very text") {
    answers::DocumentTrial trial = tried();
    trial.rows.pop_back();
    trial.answer.emplace();
    trial.answer->posted = 1;
    const std::string page = trial_page(trial);
    CHECK(page_holds(page, "action=\"/documents/ab12\"><input type=\"hidden\" name=\"token\" value=\"the-token\">"));
    CHECK(page_holds(page, "Post 1 row<"));
}

TEST_CASE("Rows that are likely a slip are counted above the button that posts them") {
    answers::DocumentTrial trial = tried();
    trial.rows.pop_back();
    trial.rows.front().doubts = {"cause: found `rol-ends`, one letter away from `roll-ends`"};
    trial.answer.emplace();
    trial.answer->posted = 1;
    const std::string page = trial_page(trial);
    CHECK(page_holds(page, "1 row would be posted, 0 posted before; 1 row to look at"));
}

TEST_CASE("A document whose every row was posted before has nothing to post") {
    answers::DocumentTrial trial = tried();
    trial.rows.pop_back();
    trial.answer.emplace();
    trial.answer->skipped = 1;
    const std::string page = trial_page(trial);
    CHECK_FALSE(page_holds(page, "/documents/ab12"));
    CHECK(page_holds(page, "0 rows would be posted, 1 posted before"));
}

TEST_CASE("The form that posts a document comes before its rows, since there may be many") {
    answers::DocumentTrial trial = tried();
    trial.rows.pop_back();
    trial.answer.emplace();
    trial.answer->posted = 1;
    const std::string page = trial_page(trial);
    CHECK(page.find("id=\"post\"") < page.find("R-1</td>"));
}

TEST_CASE("A document that was posted leads to the months of its rows") {
    using namespace std::chrono;
    pages::Frame frame;
    frame.role = pages::Role::controller;
    const std::string page = pages::posted_document_page(frame, {2026y / September, 2026y / October}, {}, {});
    CHECK(page_holds(page, "href=\"/months/2026-09\">Review September 2026</a>"));
    CHECK(page_holds(page, "href=\"/months/2026-10\">Review October 2026</a>"));
}

TEST_CASE("Only users who may post can drop, choose or paste documents") {
    pages::Frame frame;
    frame.role = pages::Role::controller;
    frame.token = "the-token";
    const std::string page = pages::documents_page(frame);
    CHECK(page_holds(page, "<div id=\"drop\" class=\"drop\" hidden>"));
    CHECK(page_holds(page, "<input class=\"unseen\" id=\"files\" type=\"file\""));
    CHECK(page_holds(page,
                     "id=\"document\" method=\"post\" action=\"/documents\"><input type=\"hidden\" name=\"token\" "
                     "value=\"the-token\">"));
    frame.role = pages::Role::reader;
    CHECK_FALSE(page_holds(pages::documents_page(frame), "<form"));
}

TEST_CASE("The page of documents has the header row of each, as it is read") {
    pages::Frame frame;
    frame.role = pages::Role::controller;
    const std::string page = pages::documents_page(frame);
    CHECK(page_holds(page, ">ref,date,shift,corrugator,paper,kg,note</td>"));
    CHECK(page_holds(page, ">ref,date,account,of,kg,amount,note</td>"));
}
