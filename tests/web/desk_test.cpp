// What is asked beside an enquiry, and the parts of a saved quote that have addresses of their own: each answers what
// the command line answers.
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "tests/system/face.hpp"
#include "tests/web/served.hpp"

using namespace flutebook::fixture;
using Json = nlohmann::ordered_json;

namespace {

const std::string enquiry_line = "0201 400x300x250 B-140 500 1000 5000 2c 18% 2026-10-15";

struct QuoteDesk {
    PlantCopy copy;
    Served served{copy.folder()};
    Browser browser{served};

    [[nodiscard]] std::string command(const std::vector<std::string>& options) const {
        std::vector<std::string> words = {"quote", enquiry_line, "--json"};
        words.insert(words.end(), options.begin(), options.end());
        return ask_at(copy.folder(), words).output;
    }
    [[nodiscard]] Reply desk(const std::string& query, const std::string& accept = as_document) {
        return browser.get("/quotes/new?line=" + encoded(enquiry_line) + query, accept);
    }
    void save() { REQUIRE(browser.post("/quotes", {{"line", enquiry_line}}).status == 303); }
};

bool has_part(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("the desk asks who approves of a quote where a limit of the plant is above its profit") {
    PlantCopy copy;
    copy.replace("plant.yaml", "# pricing:", "pricing:\n  approve_below: {0.10: [A. Example]}\n#");
    Served served{copy.folder()};
    Browser browser{served};
    const auto page = [&](const std::string& margin) {
        return browser.get("/quotes/new?line=" + encoded("0201 400x300x250 B-140 5000 2c 2026-10-15 " + margin)).body;
    };
    CHECK(has_part(page("9%"), "name=\"approver\""));
    CHECK_FALSE(has_part(page("18%"), "name=\"approver\""));
}

TEST_CASE("what is asked beside an enquiry answers the documents of the command line") {
    QuoteDesk one;
    struct Case {
        std::string query;
        std::vector<std::string> options;
    };
    const std::vector<Case> cases = {
        {"&with=papers.*.price%3D%2B5%25&with=request.margin%3D0.2&with=",
         {"--with", "papers.*.price=+5%", "--with", "request.margin=0.2"}},
        {"&boards=B-140&boards=C-125&margins=15,18", {"--board", "B-140,C-125", "--margin", "15,18"}},
        {"&boards=B-140,C-125&with=papers.*.price%3D%2B5%25",
         {"--board", "B-140,C-125", "--with", "papers.*.price=+5%"}},
        {"&prices=590,610.50", {"--price", "590,610.50"}},
        {"&rank=1000", {"--rank", "1000"}},
        {"&ect=5", {"--ect", "5"}},
        {"&corrugator=C1&roll=2050&ups=1", {"--corrugator", "C1", "--roll", "2050", "--ups", "1"}},
    };
    for (const Case& item : cases) {
        INFO(item.query);
        const Reply reply = one.desk(item.query);
        CHECK(reply.status == 200);
        CHECK(reply.body == one.command(item.options));
    }
}

TEST_CASE("what is wrong with what is asked beside an enquiry is told in its place, and the enquiry keeps its price") {
    QuoteDesk one;
    for (const char* query : {"&with=papers.nowhere.price%3D5", "&margins=15&prices=590", "&boards=B-999x",
                              "&rank=1000&boards=B-140", "&prices=cheap", "&roll=none"}) {
        INFO(query);
        const Reply page = one.desk(query, "text/html");
        CHECK(page.status == 200);
        CHECK(has_part(page.body, "id=\"quantity-3\""));
        const std::size_t beside = page.body.find("id=\"beside\"");
        REQUIRE(beside != std::string::npos);
        CHECK(beside < page.body.find("id=\"missing\""));
    }
    CHECK(has_part(one.desk("&margins=15&prices=590", "text/html").body,
                   "Margins: a price has its own margin: found Prices asked"));
    for (const char* query : {"&boards=B-999x", "&corrugator=C9", "&prices=590.123", "&with=a.b%3D1&rank=7"})
        CHECK_FALSE(has_part(one.desk(query, "text/html").body, " --"));
    CHECK(one.desk("&margins=15&prices=590").status == 422);
    CHECK(one.desk("&with=papers.nowhere.price%3D5").status == 422);
}

TEST_CASE("a way that is forced is priced beside the cheapest, leads back to it, and is not offered to be saved") {
    QuoteDesk one;
    const std::string page = one.desk("&corrugator=C1&roll=2050", "text/html").body;
    CHECK(has_part(page, "id=\"any-way\""));
    CHECK_FALSE(has_part(page, "id=\"save\" method"));
    CHECK(has_part(one.desk("", "text/html").body, "id=\"save\" method"));
    const auto price = [](const std::string& document) {
        return Json::parse(document)["requests"][0]["quotes"][0]["price_per_thousand"].dump();
    };
    const std::string cheapest = price(one.command({})), forced = price(one.command({"--roll", "2050"}));
    CHECK(cheapest != forced);
    const std::size_t beside = page.find("id=\"beside\"");
    CHECK(page.find(cheapest, beside) != std::string::npos);
    CHECK(page.find(forced, beside) != std::string::npos);
}

TEST_CASE("each way that comes next leads to the quote that is made that way alone") {
    QuoteDesk one;
    const Json ways = Json::parse(one.command({}))["requests"][0]["quotes"][1]["runners_up"];
    REQUIRE(ways.size() == 3);
    const std::string page = one.desk("&quantity=1000", "text/html").body;
    for (std::size_t i = 0; i < ways.size(); ++i) {
        const std::size_t link = page.find("id=\"ways-walk-way-" + std::to_string(i + 1) + "\"");
        REQUIRE(link != std::string::npos);
        const std::size_t begin = page.find("href=\"", link) + 6;
        std::string target = page.substr(begin, page.find('"', begin) - begin);
        for (std::size_t at = target.find("&amp;"); at != std::string::npos; at = target.find("&amp;"))
            target.replace(at, 5, "&");
        const Json quote = Json::parse(one.browser.get(target, as_document).body)["requests"][0]["quotes"][1];
        CHECK(quote["cost"] == ways[i]["cost"]);
    }
}

TEST_CASE("what is behind a line of a saved quote is what --explain says of its request") {
    QuoteDesk one;
    one.save();
    const Reply reply = one.browser.get("/quotes/Q000001/lines/starch?quantity=1000", as_document);
    REQUIRE(reply.status == 200);
    const Json expected = Json::parse(one.command({"--explain", "starch@1000"}))["requests"][0]["quotes"][1]["explain"];
    const auto explained = [](const std::string& document) {
        return Json::parse(document)["requests"][0]["quotes"][1]["explain"];
    };
    REQUIRE(expected.size() == 1);
    // The saved plant's files are those of the ledger, by their names alone.
    CHECK(explained(reply.body)[0]["figures"].size() == expected[0]["figures"].size());
    CHECK(explained(reply.body)[0]["figures"][0]["value"] == expected[0]["figures"][0]["value"]);
    const std::string page = one.browser.get("/quotes/Q000001/lines/starch?quantity=1000").body;
    CHECK(has_part(page, "plugins.yaml:14"));
    CHECK_FALSE(has_part(page, one.copy.folder()));
}

TEST_CASE("a step of a line of a saved quote is told alone") {
    QuoteDesk one;
    one.save();
    const auto trails = [&](const std::string& query) {
        const Reply reply = one.browser.get("/quotes/Q000001/lines/running.labour?quantity=1000" + query, as_document);
        return Json::parse(reply.body)["requests"][0]["quotes"][1]["explain"].size();
    };
    CHECK(trails("") == 2);
    CHECK(trails("&step=0") == 1);
    CHECK(trails("&step=1") == 1);
    CHECK(trails("&step=7") == 0);
}

TEST_CASE("a figure, a quantity or a quote that is not there is refused by its name") {
    QuoteDesk one;
    one.save();
    CHECK(one.browser.get("/quotes/Q000001/lines/starh", as_document).status == 422);
    CHECK(has_part(one.browser.get("/quotes/Q000001/lines/starh", as_document).body, "did you mean 'starch'"));
    CHECK(has_part(one.browser.get("/quotes/Q000001/lines/starch?quantity=7", as_document).body,
                   "it has 500, 1 000 and 5 000"));
    CHECK(one.browser.get("/quotes/Q000001/lines/starch?step=x", as_document).status == 422);
    CHECK(one.browser.get("/quotes/Q000009/lines/starch", as_document).status == 404);
    CHECK(one.browser.get("/quotes/Q000009.svg", as_document).status == 404);
    CHECK(one.browser.get("/quotes/Q000001.svg?quantity=7", as_document).status == 422);
}

TEST_CASE("each figure of a saved quote's page leads to what is behind it") {
    QuoteDesk one;
    one.save();
    const std::string page = one.browser.get("/quotes/Q000001?quantity=5000").body;
    CHECK(has_part(page, "href=\"/quotes/Q000001/lines/starch?quantity=5000\""));
    CHECK(one.browser.get("/quotes/Q000001/lines/starch?quantity=5000").status == 200);
}

TEST_CASE("the layout of a saved quote is a drawing of its own, and a customer's shows the folded box alone") {
    QuoteDesk one;
    one.save();
    const Reply layout = one.browser.get("/quotes/Q000001.svg");
    CHECK(layout.status == 200);
    CHECK(layout.header("content-type") == "image/svg+xml");
    CHECK(has_part(layout.header("content-security-policy"), "style-src 'sha256-"));
    CHECK(has_part(layout.body, "side trim"));
    const Reply offered = one.browser.get("/quotes/Q000001.svg?for=customer");
    CHECK(offered.status == 200);
    CHECK(has_part(offered.body, "folded"));
    for (const char* secret : {"trim", "C1", "1440", "2450", "B-140", "crease", "tab"}) {
        INFO(secret);
        CHECK_FALSE(has_part(offered.body.substr(offered.body.find("</style>")), secret));
    }
}
