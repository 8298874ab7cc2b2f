// Saved quotes as pages: the list and its search, one as it was, two beside each other.
#include "host/pages/saved_quote_page.hpp"

#include <catch2/catch.hpp>

#include "host/pages/quote_list_page.hpp"
#include "host/pages/report_page.hpp"
#include "tests/unit/pages/demo_desk.hpp"
#include "tests/unit/pages/page_text.hpp"

using namespace flutebook;
using fixture::holds;

namespace {

constexpr const char* hostile_text = "\"><script>alert(1)</script>";

struct SavedLine {
    fixture::AnsweredLine line = fixture::answered(fixture::everyday_line);
    answers::ListedQuote listed = fixture::listed(*line.answer);

    [[nodiscard]] pages::SavedQuotePage page() const {
        pages::SavedQuotePage result{fixture::demo_plant(), *line.answer, listed,
                                     pages::answer_view(pages::Address("/quotes").at(listed.number), {})};
        result.view.origins = pages::AnswerView::Origins::apart;
        result.request_text = line.answer->request.text;
        return result;
    }
};

std::string list_page(const answers::QuoteList& list, const pages::FormFields& asked) {
    return pages::quote_list_page(fixture::accountant(), {plant::Units::metric, list, asked, {}});
}

}  // namespace

TEST_CASE("a list of quotes leads to each of them") {
    const SavedLine saved;
    const std::string page = list_page({{saved.listed}, false}, {});
    CHECK(holds(page, "href=\"/quotes/Q000007\""));
    CHECK(holds(page, "Ashlar Tiles"));
    CHECK_FALSE(holds(page, "id=\"older\""));
}

TEST_CASE("older quotes are asked for by the same search") {
    const SavedLine saved;
    CHECK(holds(list_page({{saved.listed}, true}, {{"for", "ash"}, {"state", ""}, {"before", "Q000009"}}),
                "id=\"older\" href=\"/quotes?for=ash&amp;before=Q000007\""));
}

TEST_CASE("a ledger without quotes is told from a search that finds none") {
    CHECK(holds(list_page({}, {}), "No quote is saved yet"));
    CHECK(holds(list_page({}, {{"for", "ash"}}), "No saved quote matches"));
}

TEST_CASE("what is searched for stays in the form, and becomes no markup") {
    const std::string page = list_page({}, {{"for", hostile_text}, {"state", "won"}});
    CHECK(holds(page, "name=\"for\" value=\"&quot;&gt;&lt;script&gt;"));
    CHECK(holds(page, "<option value=\"won\" selected>"));
    CHECK_FALSE(holds(page, "<script>alert"));
}

TEST_CASE("a saved quote shows its prices, what became of it and what can be done with it") {
    const SavedLine saved;
    const std::string page = pages::saved_quote_page(fixture::accountant(), saved.page());
    CHECK(holds(fixture::part(page, "history"), "8 % above the price of their last lot"));
    CHECK(fixture::rows_of(fixture::part(page, "ladder")).at("price per thousand").size() == 3);
    for (const char* address : {"/quotes/Q000007.html?for=customer", "/quotes/Q000007.html\"", "/quotes/Q000007.xlsx",
                                "/quotes/Q000007/recheck", "/quotes/Q000007/mark", "/quotes/Q000007/order"})
        CHECK(holds(page, address));
}

TEST_CASE("a revision begins from the request as a line, under its number") {
    const SavedLine saved;
    const std::string page = pages::saved_quote_page(fixture::accountant(), saved.page());
    CHECK(holds(
        page, "id=\"revise\" href=\"/quotes/new?line=0201+400x300x250+B-140+500+1000+5000+2c+18%25+FG1+request%3DE-"));
}

TEST_CASE("a request that is no line has no such revision, and who may not quote has none") {
    SavedLine saved;
    pages::Frame reader = fixture::accountant();
    reader.role = pages::Role::reader;
    const std::string page = pages::saved_quote_page(reader, saved.page());
    for (const char* id : {"id=\"revise\"", "id=\"mark\"", "id=\"order\""}) CHECK_FALSE(holds(page, id));
    pages::SavedQuotePage drawing = saved.page();
    drawing.request_text = "style: outline\n";
    CHECK_FALSE(holds(pages::saved_quote_page(fixture::accountant(), drawing), "id=\"revise\""));
}

TEST_CASE("a figure of a saved quote leads to a page of its own, since what is behind it was not kept") {
    const SavedLine saved;
    const std::string page = pages::saved_quote_page(fixture::accountant(), saved.page());
    CHECK(holds(page, "/lines/starch?quantity=500\">"));
    CHECK_FALSE(holds(page, "explain="));
}

TEST_CASE("two quotes stand beside each other with their own prices") {
    const SavedLine saved;
    SavedLine other;
    other.line = fixture::answered("0201 400x300x250 BC-170 500 1000 18% 2026-10-15");
    other.listed = fixture::listed(*other.line.answer);
    other.listed.number = "Q000008";
    const std::string page = pages::quotes_beside_page(fixture::accountant(), saved.page(), other.page());
    const auto first = fixture::rows_of(fixture::part(page, "first")),
               second = fixture::rows_of(fixture::part(page, "second"));
    CHECK(first.at("price per thousand").size() == 3);
    CHECK(second.at("price per thousand").size() == 2);
    CHECK(first.at("price per thousand").front() != second.at("price per thousand").front());
}

TEST_CASE("what somebody wrote of a quote becomes no markup") {
    SavedLine saved;
    saved.listed.customer = saved.listed.who = saved.listed.marks.front().why = hostile_text;
    saved.line.answer->request.customer = hostile_text;
    CHECK_FALSE(holds(pages::saved_quote_page(fixture::accountant(), saved.page()), "<script>alert"));
    CHECK_FALSE(holds(list_page({{saved.listed}, false}, {}), "<script>alert"));
}

TEST_CASE("a report in the frame becomes no markup, and has no two elements of one id") {
    render::Report report{"x", "y", render::ReportHeading{hostile_text, "", {{hostile_text, {hostile_text}}}}, {}};
    report.sections.push_back({hostile_text, {render::Note{hostile_text}}});
    report.sections.push_back({hostile_text, {render::Note{hostile_text}}, render::ReportSection::Kind::part});
    const std::string page = pages::report_page(fixture::accountant(), hostile_text, {report, report});
    CHECK_FALSE(holds(page, "<script>alert"));
    CHECK(page.find("id=\"r0-1\"") == page.rfind("id=\"r0-1\""));
    CHECK(holds(page, "id=\"r1-1\""));
}
