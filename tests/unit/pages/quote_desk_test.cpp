// The quote desk on the demo plant: what it shows is what was answered, and nothing that is typed becomes markup.
#include "host/pages/quote_desk.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "host/answers/quote_json.hpp"
#include "host/render/number_text.hpp"
#include "tests/unit/pages/demo_desk.hpp"
#include "tests/unit/pages/page_text.hpp"

using namespace flutebook;
using fixture::desk_page;
using fixture::everyday_line;
using fixture::holds;
using nlohmann::json;

namespace {

constexpr const char* hostile = "\"><script>alert(1)</script>";

json document_of(const answers::RequestAnswer& answer) {
    answers::QuoteStream stream(fixture::demo_plant(), {}, {});
    return json::parse(stream.begin() + stream.add(answer, "") + stream.end()).at("requests").at(0);
}

double amount_of(const json& value) {
    return value.is_string() ? std::stod(value.get<std::string>()) : value.get<double>();
}

}  // namespace

TEST_CASE("the desk says how it understood the line") {
    CHECK(holds(desk_page({{"line", everyday_line}}), "style 0201, inside 400 x 300 x 250 mm"));
}

TEST_CASE("the desk shows the figures of the answer's document, quantity by quantity") {
    const fixture::AnsweredLine result = fixture::answered(everyday_line);
    const json document = document_of(*result.answer);
    const auto rows = fixture::rows_of(fixture::part(desk_page({{"line", everyday_line}}), "ladder"));
    REQUIRE(document.at("quotes").size() == 3);
    for (std::size_t i = 0; i < 3; ++i) {
        const json& quote = document.at("quotes").at(i);
        CHECK(rows.at("price per thousand").at(i) == render::number_text(amount_of(quote.at("price_per_thousand")), 2));
        CHECK(rows.at("order value").at(i) == render::number_text(amount_of(quote.at("order_value")), 2));
        CHECK(rows.at("cost").at(i) == render::number_text(amount_of(quote.at("cost")), 2));
    }
}

TEST_CASE("order value less cost is the profit, as printed") {
    const auto rows = fixture::rows_of(fixture::part(desk_page({{"line", everyday_line}}), "ladder"));
    for (std::size_t i = 0; i < 3; ++i)
        CHECK(fixture::units(rows.at("order value").at(i)) - fixture::units(rows.at("cost").at(i)) ==
              fixture::units(rows.at("profit").at(i)));
}

TEST_CASE("the printed amounts of each class come to its sum, and the sums to the cost") {
    for (const char* quantity : {"500", "1000", "5000"}) {
        const std::string page = desk_page({{"line", everyday_line}, {"quantity", quantity}});
        const fixture::PrintedSums sums = fixture::sums_of(fixture::part(page, "cost"));
        CHECK(sums.classes == 5);
        CHECK(sums.faults == std::vector<std::string>{});
        CHECK(sums.total != 0);
    }
}

TEST_CASE("what is behind a figure opens below it, down to file and line") {
    const std::string page = desk_page({{"line", everyday_line}, {"quantity", "1000"}, {"explain", "starch"}});
    const std::string cost = fixture::part(page, "cost");
    CHECK(holds(cost, "<details class=\"behind\" open id=\"behind-starch\">"));
    CHECK(holds(cost, "plugins.yaml:14:"));
    CHECK_FALSE(holds(cost, FLUTEBOOK_SOURCE_DIR));
}

TEST_CASE("every figure of the cost sheet that has a name leads to what is behind it") {
    const std::string page = desk_page({{"line", everyday_line}});
    for (const char* figure : {"paper", "starch", "energy.heat", "running.labour", "scrap.credit", "cost"})
        CHECK(holds(page, "id=\"cost-walk-" + std::string(figure) + "\""));
}

TEST_CASE("what is typed becomes no markup, wherever it comes back") {
    for (const char* field : {"line", "style", "l", "board", "quantities", "margin", "colours", "route", "customer",
                              "request", "date", "consumables.coverage"}) {
        CAPTURE(field);
        CHECK_FALSE(holds(desk_page({{"style", "0201"}, {field, hostile}}), "<script>alert"));
    }
    const std::string line = std::string(everyday_line) + " customer='><script>alert(1)</script> request=<i>";
    const std::string page = desk_page({{"line", line}});
    CHECK(holds(page, "id=\"ladder\" aria-labelledby"));
    CHECK_FALSE(holds(page, "<script>alert"));
    CHECK_FALSE(holds(page, "<i>"));
}

TEST_CASE("a line that is not understood says so beside it, fills what was understood and has examples") {
    const std::string page = desk_page({{"line", "0201 400x300x250 B-999 500"}});
    CHECK(holds(page, "not understood: found `B-999`"));
    CHECK(holds(page, "name=\"quantities\" value=\"500\""));
    CHECK(holds(page, "id=\"start\""));
    CHECK_FALSE(holds(page, "id=\"save\" method"));
}

TEST_CASE("each example that an empty desk has is answered with a price") {
    const std::string page = desk_page({});
    std::size_t examples = 0;
    const std::string begin = "<code>", end = "</code>";
    for (std::size_t at = page.find(begin); at != std::string::npos; at = page.find(begin, at + 1)) {
        const std::size_t from = at + begin.size();
        const std::string line = fixture::without_entities(page.substr(from, page.find(end, at) - from));
        CAPTURE(line);
        const fixture::AnsweredLine result = fixture::answered(line);
        REQUIRE(result.answer);
        CHECK(result.answer->is_complete());
        ++examples;
    }
    CHECK(examples == 3);
}

TEST_CASE("a quantity that nothing can make is told with its limits, and there is no sheet of it") {
    const std::string page = desk_page({{"line", "0201 2400x1900x1250 B-140 500 18%"}});
    CHECK(holds(fixture::part(page, "limits"), "no corrugator, roll and route can make this order"));
    CHECK(fixture::part(page, "cost").find("hidden") != std::string::npos);
}

TEST_CASE("a model at fault is told in place of the answer") {
    fixture::AnsweredLine result = fixture::answered(everyday_line);
    result.answer->model_fault = "model starch: <b>wrote no number</b>";
    const std::string page = pages::quote_desk_page(
        fixture::accountant(), {fixture::demo_plant(), fixture::demo_engine().graph().models, result.enquiry,
                                pages::answer_view(pages::desk_address(everyday_line), {}), &*result.answer});
    CHECK(holds(fixture::part(page, "fault"), "&lt;b&gt;wrote no number"));
    CHECK_FALSE(holds(page, "id=\"save\" method"));
}

TEST_CASE("who may not save has no form for it") {
    fixture::AnsweredLine result = fixture::answered(everyday_line);
    pages::Frame reader = fixture::accountant();
    reader.role = pages::Role::reader;
    const pages::QuoteDesk desk{fixture::demo_plant(), fixture::demo_engine().graph().models, result.enquiry,
                                pages::answer_view(pages::desk_address(everyday_line), {}), &*result.answer};
    CHECK_FALSE(holds(pages::quote_desk_page(reader, desk), "id=\"save\" method"));
    CHECK(holds(pages::quote_desk_page(fixture::accountant(), desk), "id=\"save\" method"));
}

TEST_CASE("what saves a quote stands with its price, and asks who approves only of a quote that needs it") {
    const std::string ladder = fixture::part(desk_page({{"line", everyday_line}}), "ladder");
    CHECK(holds(ladder.substr(0, ladder.find("<table")), "id=\"save\" method=\"post\""));
    CHECK_FALSE(holds(ladder, "name=\"approver\""));

    const fixture::AnsweredLine result = fixture::answered(everyday_line);
    pages::QuoteDesk desk{fixture::demo_plant(), fixture::demo_engine().graph().models, result.enquiry,
                          pages::answer_view(pages::desk_address(everyday_line), {}), &*result.answer};
    desk.needs_approval = true;
    CHECK(holds(pages::quote_desk_page(fixture::accountant(), desk), "name=\"approver\""));
}

TEST_CASE("the fields of the form say the same as the line") {
    CHECK(pages::asked_line({{"style", "0201"},
                             {"l", "400"},
                             {"w", "300"},
                             {"h", "250"},
                             {"board", "B-140"},
                             {"quantities", "500 1000"},
                             {"margin", "18"},
                             {"colours", "2"},
                             {"customer", "A B"},
                             {"consumables.coverage", "0.3"},
                             {"quantity", "500"},
                             {"explain", "price"}}) ==
          "0201 400x300x250 B-140 500 1000 2c 18% consumables.coverage=0.3 customer=\"A B\"");
    CHECK(pages::asked_line({{"line", "0201"}, {"style", "0427"}}) == "0201");
}
