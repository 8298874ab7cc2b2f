// A ledger that the release 1.0.0 made, opened by the program of today: its quotes and orders are there as they were.
#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

#include "host/answers/quote_json.hpp"
#include "ledger/values/error.hpp"
#include "tests/system/face.hpp"

using namespace flutebook;
using namespace flutebook::fixture;
using Catch::Matchers::Contains;
using Json = nlohmann::ordered_json;
namespace fs = std::filesystem;

namespace {

const std::string kept = FLUTEBOOK_SOURCE_DIR "/tests/system/kept/";

std::string text_of(const std::string& file) {
    std::ostringstream result;
    result << std::ifstream(kept + file, std::ios::binary).rdbuf();
    return result.str();
}

// The demo plant with the ledger that was kept.
class PlantWithKeptLedger : public PlantCopy {
public:
    PlantWithKeptLedger() { fs::copy_file(kept + "ledger-of-1.0.0.db", folder() + "/ledger.db"); }
    [[nodiscard]] Ended ask(const std::vector<std::string>& words) const { return ask_at(folder(), words); }
};

}  // namespace

TEST_CASE("a quote of release 1.0.0 is shown as it was, to the byte") {
    const PlantWithKeptLedger plant;
    for (const std::string number : {"Q000001", "Q000002"}) {
        const Ended ended = plant.ask({"quote", "show", number});
        CHECK(ended.exit_code == 0);
        CHECK(ended.output == text_of("quote-" + number + ".txt"));
    }
    const Json json = Json::parse(plant.ask({"quote", "show", "Q000001", "--json"}).output);
    CHECK(json["requests"][0]["quotes"].size() == 3);
    CHECK_FALSE(json.contains("answer_version"));
}

// Release 1.0.0 measured a board by its flutes alone. With the liners in its caliper a pallet holds fewer blanks.
TEST_CASE(
    "a quote of release 1.0.0 is rechecked figure by figure: a thicker board moves pallets and freight, nothing else") {
    const PlantWithKeptLedger plant;
    for (const std::string number : {"Q000001", "Q000002"}) {
        const Ended ended = plant.ask({"quote", "recheck", number, "--json"});
        INFO(number << ended.errors);
        CHECK(ended.exit_code == 1);
        const Json json = Json::parse(ended.output);
        CHECK(json["cause"] == "plugins");
        for (const Json& quantity : json["quantities"]) {
            double dearer_by = 0;
            for (const Json& line : quantity["lines"]) {
                CHECK(line["plugin"] == "delivery");
                dearer_by += line["by"].get<double>();
            }
            for (const Json& figure : quantity["figures"])
                if (figure["key"] == "cost") CHECK(figure["by"].get<double>() == Approx(dearer_by));
            // What only today's document has makes no figure another.
            std::size_t changed = 0;
            for (const Json& figure : quantity["figures"]) changed += figure["was"].is_null() ? 0U : 1U;
            CHECK((changed == 0) == quantity["lines"].empty());
        }
    }
    // At 500 and 1000 boxes the pallets are as many as they were.
    const Json first = Json::parse(plant.ask({"quote", "recheck", "Q000001", "--json"}).output)["quantities"];
    CHECK(first[0]["differs"] == false);
    CHECK(first[1]["differs"] == false);
}

TEST_CASE("a dearer paper makes a quote of release 1.0.0 different, by the plant's files") {
    PlantWithKeptLedger plant;
    plant.replace("papers.yaml", "{from: 2026-01-01, per_tonne: 640}", "{from: 2026-01-01, per_tonne: 700}");
    const Ended ended = plant.ask({"quote", "recheck", "Q000001", "--json"});
    CHECK(ended.exit_code == 1);
    const Json json = Json::parse(ended.output);
    CHECK(json["cause"] == "both");  // at 5000 boxes the thicker board takes one more pallet
    CHECK(json["quantities"][0]["figures"][0]["key"] == "cost");
    CHECK(json["quantities"][0]["saved_files"] == json["quantities"][0]["was"]);
}

TEST_CASE("an order that release 1.0.0 took and posted costs what it cost") {
    const PlantWithKeptLedger plant;
    const Ended ended = plant.ask({"order", "cost", "26-0417", "--json"});
    INFO(ended.errors);
    REQUIRE(ended.exit_code == 0);
    const Json now = Json::parse(ended.output);
    const Json kept_cost = Json::parse(text_of("order-cost.json"));
    for (const auto& then : kept_cost.items()) {
        if (then.key() == "plugins" || then.key() == "as_quoted") continue;  // other files: built today
        INFO(then.key());
        CHECK(now.at(then.key()) == then.value());
    }
}

TEST_CASE("an order is taken today from a quote of release 1.0.0") {
    const PlantWithKeptLedger plant;
    CHECK(plant.ask({"order", "Q000001", "1000", "--as", "26-0418"}).exit_code == 0);
    CHECK(plant.ask({"verify"}).exit_code == 0);
}

TEST_CASE("every demo request's document reads back and is written again to the same bytes") {
    for (const std::string& file : all_demo_requests()) {
        INFO(file);
        const std::string text = quote_demo({file}, {"--json", "--explain", "paper"}).output;
        const answers::QuoteDocument document = answers::read_quote(file, text);
        CHECK(document.version == answers::document_version);
        CHECK(answers::quote_text(document.plant, document.answer, document.asked) == text);
    }
}

TEST_CASE("a saved quote is shown from its document as it was printed when it was asked for") {
    const PlantCopy plant;
    for (const std::string& file : all_demo_requests()) {
        INFO(file);
        const Ended quoted = ask_at(plant.folder(), {"quote", file, "--sheet", "--save", "--explain", "paper"});
        const std::size_t saved = quoted.output.find("saved as ");
        if (saved == std::string::npos) continue;  // nothing could be made
        const Ended shown = ask_at(plant.folder(), {"quote", "show", quoted.output.substr(saved + 9, 7)});
        CHECK(shown.output == quoted.output.substr(0, saved));
    }
}

TEST_CASE("a document of an unknown version is refused with what was found") {
    const std::string text = R"({"answer": "quote", "answer_version": 7, "plant": "P", "currency": "EUR"})";
    try {
        (void)answers::read_quote("quote Q000001", text);
        FAIL("it was read");
    } catch (const LedgerError& error) {
        CHECK_THAT(error.what(), Contains("quote Q000001: ") && Contains("found 7; use "));
    }
}

TEST_CASE("a text that is no document of a quote is refused") {
    for (const std::string text : {"", "[]", "{\"answer_version\": 1}", "{\"answer_version\": \"one\"}"})
        CHECK_THROWS_AS(answers::read_quote("quote Q000001", text), LedgerError);
}
