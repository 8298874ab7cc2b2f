// A plant and a request out of a saved quote: as they were kept, wherever the files have gone.
#include "host/saved_quotes/saved_workplace.hpp"

#include <algorithm>
#include <catch2/catch.hpp>

#include "host/base/errors.hpp"
#include "host/saved_quotes/saved_quote.hpp"
#include "ledger/values/error.hpp"
#include "tests/unit/saved_quotes/kept_quote.hpp"

using namespace flutebook;
using namespace flutebook::fixture;
using Catch::Matchers::Contains;
using Catch::Matchers::StartsWith;

namespace {

std::string first_line(const InputError& error) {
    return error.lines().front();
}

template <typename Work>
std::string complaint(const Work& work) {
    try {
        work();
    } catch (const InputError& error) {
        return first_line(error);
    }
    return "";
}

// A quote of the days before it was kept how it was asked for.
ledger::SavedQuote kept_before() {
    ledger::SavedQuote quote = kept_quote();
    quote.parts.erase(quote.parts.begin());
    return quote;
}

}  // namespace

TEST_CASE("a saved plant is the kept texts, and its plugins are looked for where the plant is today") {
    const plant::Plant saved = saved_quotes::saved_plant(kept_quote(), "/plant/of/today");
    CHECK(saved.name == plant::read_plant(demo_folder()).name);
    CHECK(saved.papers.size() == plant::read_plant(demo_folder()).papers.size());
    CHECK(saved.folder == "/plant/of/today");
}

TEST_CASE("what is wrong with a kept file begins with the quote's number and has the name of that day") {
    ledger::SavedQuote quote = kept_quote();
    part(quote, "plant/papers.yaml") = "papers: 7\n";
    CHECK_THAT(complaint([&] { return saved_quotes::saved_plant(quote, demo_folder()); }),
               StartsWith("quote Q000001 as it was saved: plant/papers.yaml:1:9: papers: "));
}

TEST_CASE("a kept plant that lacks a file is unfit and named") {
    ledger::SavedQuote quote = kept_quote();
    quote.parts.pop_back();
    CHECK_THROWS_WITH(saved_quotes::saved_plant(quote, demo_folder()), Contains("plant/plugins.yaml is missing"));
}

TEST_CASE("a saved request has the prices of the day that was asked for") {
    ledger::SavedQuote quote = kept_quote();
    part(quote, "asked.json") =
        R"({"plant": "plant", "request": "plant/R-1001.yaml", "date": "2026-12-01", "explain": "starch"})";
    const plant::Plant plant = saved_quotes::saved_plant(quote, demo_folder());
    CHECK(base::to_string(saved_quotes::saved_request(quote, plant).date) == "2026-12-01");
    CHECK(saved_quotes::saved_options(quote).explain == "starch");
}

TEST_CASE("a quote that was saved before it was kept how it was asked for has the request's own day") {
    const ledger::SavedQuote quote = kept_before();
    const plant::Plant plant = saved_quotes::saved_plant(quote, demo_folder());
    const orders::Request request = saved_quotes::saved_request(quote, plant);
    CHECK(base::to_string(request.date) == "2026-10-15");
    CHECK(request.place.file == "Q000001/request.yaml");
}

TEST_CASE("how a quote was asked for is unfit where it can no longer be read") {
    ledger::SavedQuote quote = kept_quote();
    part(quote, "asked.json") = GENERATE(as<std::string>{}, "", "{", "7", R"({"plant": "p"})",
                                         R"({"plant": 7, "request": "", "date": "", "explain": null})",
                                         R"({"plant": "", "request": "", "date": 7, "explain": null})");
    CHECK_THROWS_AS(saved_quotes::saved_options(quote), LedgerError);
}

TEST_CASE("a saved request is refused by a plant of today that no longer has its board") {
    plant::Plant today = plant::read_plant(demo_folder());
    today.boards.erase(std::find_if(today.boards.begin(), today.boards.end(),
                                    [](const plant::Board& board) { return board.code == "B-140"; }));
    CHECK_THAT(complaint([&] { return saved_quotes::saved_request(kept_quote(), today); }),
               StartsWith("quote Q000001 as it was saved: plant/R-1001.yaml:") && Contains("board"));
}
