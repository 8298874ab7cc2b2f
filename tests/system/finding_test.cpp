// Saved quotes found again by the real program: by what was asked for and what became of it, copied into new requests,
// and costed at another day's prices.
#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

#include "tests/system/face.hpp"

using namespace flutebook::fixture;
using Catch::Matchers::Contains;
using Json = nlohmann::ordered_json;
namespace fs = std::filesystem;

namespace {

const std::string kept = FLUTEBOOK_SOURCE_DIR "/tests/system/kept/";

class FindingPlant : public PlantCopy {
public:
    FindingPlant() = default;
    explicit FindingPlant(const std::string& kept_ledger) {
        fs::copy_file(kept + kept_ledger, folder() + "/ledger.db");
    }

    [[nodiscard]] Ended ask(const std::vector<std::string>& words) const { return ask_at(folder(), words); }

    Ended done(const std::vector<std::string>& words) const {
        Ended ended = ask(words);
        INFO(ended.errors);
        REQUIRE(ended.exit_code == 0);
        return ended;
    }
    // `quote list` with these words.
    [[nodiscard]] Json list(std::vector<std::string> words = {}) const {
        words.insert(words.begin(), {"quote", "list", "--json"});
        return Json::parse(done(words).output);
    }
    [[nodiscard]] std::vector<std::string> found(const std::vector<std::string>& words) const {
        std::vector<std::string> numbers;
        const Json answer = list(words);
        for (const Json& quote : answer["quotes"]) numbers.push_back(quote["saved"]);
        return numbers;
    }
    // The number that it was saved under.
    std::string save(const std::string& file) const {
        const Json json = Json::parse(done({"quote", file, "--save", "--json"}).output);
        return json["requests"][0]["saved"];
    }
};

using Numbers = std::vector<std::string>;

std::string file_text(const std::string& file) {
    std::ostringstream result;
    result << std::ifstream(file, std::ios::binary).rdbuf();
    return result.str();
}

std::string box_request(const std::string& number, const std::string& customer, const std::string& inside,
                        const std::string& quantities = "500, 1000") {
    return "request: " + number + "\ncustomer: " + customer + "\ndate: 2026-10-15\nstyle: \"0201\"\ninside: " + inside +
           "\nboard: B-140\nquantities: [" + quantities + "]\nmargin: 0.18\n";
}

}  // namespace

TEST_CASE("saved quotes are found by customer, request, board, style, size within a tolerance, day and state") {
    const FindingPlant plant("ledger-of-schema-4.db");
    const Numbers all = plant.found({});
    CHECK(all.size() == 13);
    CHECK(std::is_sorted(all.rbegin(), all.rend()));
    CHECK(plant.found({"--request", "R-1001"}) == Numbers{"Q000013", "Q000001"});
    CHECK(plant.found({"--request", "R-9"}).empty());
    const Json first = plant.list({"--request", "R-1001"})["quotes"][1];
    CHECK(first["customer"] == "Ashlar Tiles");
    CHECK(first["style"] == "0201");
    CHECK(first["board"] == "B-140");
    CHECK(first["size_mm"] == Json::array({400, 300, 250}));
    CHECK(first["quantities"] == Json::array({500, 1000, 5000}));
    CHECK(first["state"] == "open");
    const Json sheet = Json::parse(plant.done({"quote", "show", "Q000001", "--json"}).output)["requests"][0]["quotes"];
    CHECK(first["price_first"] == sheet[0]["price_per_thousand"]);
    CHECK(first["price_last"] == sheet[2]["price_per_thousand"]);
    // Each other search against a look at every quote.
    const Json quotes = plant.list()["quotes"];
    const auto by_hand = [&](const auto& is_wanted) {
        Numbers numbers;
        for (const Json& quote : quotes)
            if (is_wanted(quote)) numbers.push_back(quote["saved"]);
        CHECK_FALSE(numbers.empty());
        CHECK(numbers.size() < quotes.size());
        return numbers;
    };
    CHECK(plant.found({"--customer", "ASHLAR"}) ==
          by_hand([](const Json& quote) { return quote["customer"] == "Ashlar Tiles"; }));
    CHECK(plant.found({"--board", "B-140", "--style", "0201"}) ==
          by_hand([](const Json& quote) { return quote["board"] == "B-140" && quote["style"] == "0201"; }));
    const auto is_near = [](const Json& size, double share) {
        const std::vector<double> wanted = {410, 295, 255};
        for (std::size_t i = 0; i < 3; ++i)
            if (std::abs(size[i].get<double>() - wanted[i]) > wanted[i] * share + 1e-9) return false;
        return true;
    };
    CHECK(plant.found({"--size", "410x295x255", "--within", "5%"}) ==
          by_hand([&](const Json& quote) { return is_near(quote["size_mm"], 0.05); }));
    CHECK(plant.found({"--size", "410x295x255", "--within", "1%"}).empty());
    CHECK(plant.found({"--size", "410x295x255", "--within", "10"}) ==
          by_hand([&](const Json& quote) { return is_near(quote["size_mm"], 0.05); }));
    CHECK(plant.found({"--size", "400x300"}) ==
          by_hand([](const Json& quote) { return quote["size_mm"][0] == 400 && quote["size_mm"][1] == 300; }));
    const std::string day = first["day"];
    CHECK(plant.found({"--from", day, "--to", day}) == all);
    CHECK(plant.found({"--to", "2026-01-01"}).empty());
    CHECK(plant.found({"--from", "2999-01-01"}).empty());
    CHECK(plant.found({"--state", "open"}) == all);
    CHECK(plant.found({"--state", "won"}).empty());
    plant.done({"verify"});
}

TEST_CASE("quotes of release 1.0.0 are found like those of today") {
    const FindingPlant plant("ledger-of-1.0.0.db");
    CHECK(plant.found({"--style", "0201", "--size", "400x300x250"}) == Numbers{"Q000001"});
    CHECK(plant.found({"--customer", "ashlar"}).size() == 1);
    const Json quote = plant.list({"--request", "R-1001"})["quotes"][0];
    CHECK(quote["board"] == "B-140");
    CHECK(quote["currency"] == "EUR");
    CHECK(quote["price_first"].get<double>() > quote["price_last"].get<double>());
    plant.done({"verify"});
    // Derived once: the next search writes nothing.
    const std::string before = plant.done({"verify", "--json"}).output;
    CHECK(plant.found({}).size() == 2);
    CHECK(plant.done({"verify", "--json"}).output == before);
}

TEST_CASE("a list of saved quotes is a table, a page at a time, newest first") {
    const FindingPlant plant("ledger-of-schema-4.db");
    const Ended page = plant.done({"quote", "list", "--limit", "5"});
    CHECK_THAT(page.output, Contains("Q000013") && Contains("Q000009") && !Contains("Q000008"));
    CHECK_THAT(page.output, Contains("Ashlar Tiles") && Contains("400x300x250") && Contains("--before Q000009"));
    CHECK(plant.list({"--limit", "5"})["before"] == "Q000009");
    CHECK(plant.found({"--limit", "5", "--before", "Q000009"}).front() == "Q000008");
    CHECK(plant.list({"--before", "Q000003"})["before"].is_null());
    CHECK_THAT(plant.done({"quote", "list", "--customer", "nobody"}).output, Contains("No saved quote matches"));
    CHECK(plant.ask({"quote", "list", "--size", "big"}).exit_code == 2);
    CHECK(plant.ask({"quote", "list", "--size", "400x300", "--within", "much"}).exit_code == 2);
    CHECK(plant.ask({"quote", "list", "--state", "gone"}).exit_code == 2);
    CHECK(plant.ask({"quote", "list", "--within", "5%"}).exit_code == 2);
}

TEST_CASE("a changed request under the same number is its next revision, and the same again keeps its number") {
    FindingPlant plant;
    const auto write = [&](const std::string& quantities) {
        return plant.write("R-1.yaml",
                           box_request("R-1", "Vellum Press", "{length: 300, width: 200, height: 150}", quantities));
    };
    CHECK(plant.save(write("500")) == "Q000001");
    CHECK(plant.save(write("500, 800")) == "Q000002");
    CHECK(plant.save(write("500, 800")) == "Q000002");
    CHECK(plant.save(write("500")) == "Q000001");
    const Json quotes = plant.list({"--request", "R-1"})["quotes"];
    REQUIRE(quotes.size() == 2);
    CHECK(quotes[0]["revision"] == 2);
    CHECK(quotes[0]["previous"] == "Q000001");
    CHECK(quotes[1]["revision"] == 1);
    CHECK(quotes[1]["previous"].is_null());
    CHECK_THAT(plant.done({"quote", "list"}).output, Contains("revision 2 of R-1, before it Q000001"));
    CHECK_THAT(plant.done({"quote", "show", "Q000002"}).output, Contains("revision 2 of R-1, before it Q000001"));
    CHECK_THAT(plant.done({"quote", "show", "Q000001"}).output, !Contains("revision"));
    // A changed answer to the same request is a revision too.
    plant.replace("papers.yaml", "{from: 2026-09-01, per_tonne: 668}", "{from: 2026-09-01, per_tonne: 700}");
    CHECK(plant.save(write("500")) == "Q000003");
    CHECK(plant.list({"--request", "R-1"})["quotes"][0]["previous"] == "Q000002");
}

TEST_CASE("a quote is marked, shown with the history of its marks, found by its state, and verified") {
    const FindingPlant plant("ledger-of-schema-4.db");
    plant.done({"quote", "mark", "Q000001", "won", "--why", "repeat order"});
    plant.done({"quote", "mark", "Q000002", "won"});
    plant.done({"quote", "mark", "Q000001", "lost", "--why", "8 % above their last lot"});
    CHECK(plant.found({"--state", "won"}) == Numbers{"Q000002"});
    CHECK(plant.found({"--state", "lost"}) == Numbers{"Q000001"});
    CHECK(plant.found({"--state", "open"}).size() == 11);
    const std::string shown = plant.done({"quote", "show", "Q000001"}).output;
    CHECK_THAT(shown, Contains(": repeat order") && Contains(": 8 % above their last lot"));
    CHECK(shown.find("won 2") < shown.find("lost 2"));
    const Json marks = plant.list({"--state", "lost"})["quotes"][0]["marks"];
    REQUIRE(marks.size() == 2);
    CHECK(marks[0]["state"] == "won");
    CHECK(marks[1]["why"] == "8 % above their last lot");
    const Json answer = Json::parse(plant.done({"quote", "mark", "Q000002", "open", "--json"}).output);
    CHECK(answer["state"] == "open");
    CHECK(plant.found({"--state", "won"}).empty());
    plant.done({"verify", "--head", answer["head"]});
}

TEST_CASE("a mark without a reason for lost, of no state or of no quote is refused, and nothing is kept") {
    const FindingPlant plant("ledger-of-schema-4.db");
    plant.done({"quote", "list"});
    const std::string before = plant.done({"verify", "--json"}).output;
    const Ended no_reason = plant.ask({"quote", "mark", "Q000001", "lost"});
    CHECK(no_reason.exit_code == 1);
    CHECK_THAT(no_reason.errors, Contains("quote Q000001: lost without a reason; give it with --why"));
    const Ended no_quote = plant.ask({"quote", "mark", "Q000099", "won"});
    CHECK(no_quote.exit_code == 1);
    CHECK_THAT(no_quote.errors, Contains("no such quote: found `Q000099`"));
    CHECK(plant.ask({"quote", "mark", "Q000001", "perhaps"}).exit_code == 2);
    CHECK(plant.ask({"quote", "mark", "Q000001"}).exit_code == 2);
    CHECK(plant.done({"verify", "--json"}).output == before);
}

TEST_CASE("a request is copied from a saved quote, and quotes saved of it show the link") {
    const FindingPlant plant("ledger-of-schema-4.db");
    const std::string file = plant.folder() + "/copy.yaml";
    const Ended copied = plant.done({"quote", "copy", "Q000001", "-o", file, "--date", "2026-10-15"});
    CHECK_THAT(copied.output, Contains("request R-1001-2, copied from Q000001"));
    CHECK_THAT(file_text(file), Contains("copied_from: Q000001") && Contains("request: R-1001-2"));
    CHECK(plant.ask({"quote", "copy", "Q000001", "-o", file}).exit_code == 1);  // there already
    const std::string number = plant.save(file);
    const Json linked = plant.list({"--request", "R-1001-2"})["quotes"][0];
    CHECK(linked["copied_from"] == "Q000001");
    CHECK(linked["revision"] == 1);
    const Json old = plant.list({"--request", "R-1001"})["quotes"][1];
    for (const auto* same : {"customer", "style", "board", "size_mm", "quantities", "price_first", "price_last"})
        CHECK(linked[same] == old[same]);
    CHECK_THAT(plant.done({"quote", "show", number}).output, Contains("copied from") && Contains("Q000001"));
    // The next copy has the next number; --as gives another; without -o it is printed.
    CHECK_THAT(plant.done({"quote", "copy", "Q000001"}).output, Contains("request: R-1001-3"));
    const Json named = Json::parse(plant.done({"quote", "copy", number, "--as", "R-2000", "--json"}).output);
    CHECK(named["request"] == "R-2000");
    CHECK_THAT(named["text"].get<std::string>(), Contains("copied_from: " + number) && !Contains("Q000001"));
}

TEST_CASE("every saved demo quote copies to a request that costs the same at the same day") {
    const FindingPlant plant("ledger-of-schema-4.db");
    const Json saved = plant.list();
    for (const Json& quote : saved["quotes"]) {
        const std::string number = quote["saved"];
        INFO(number);
        const std::string file = plant.folder() + "/copy-of-" + number + ".yaml";
        plant.done({"quote", "copy", number, "-o", file, "--date", "2026-10-15"});
        const Json again = Json::parse(plant.ask({"quote", file, "--json"}).output)["requests"][0]["quotes"];
        CHECK(again[0].value("price_per_thousand", Json()) == quote["price_first"]);
    }
}

TEST_CASE("a request that names no quote as the one it was copied from is refused at its place") {
    FindingPlant plant;
    const std::string file =
        plant.write("R-2.yaml", box_request("R-2", "Vellum Press", "{length: 300, width: 200, height: 150}") +
                                    "copied_from: R-1001\n");
    const Ended ended = plant.ask({"quote", file});
    CHECK(ended.exit_code == 1);
    CHECK_THAT(ended.errors, Contains("R-2.yaml:9:14: copied_from: not the number of a saved quote: found `R-1001`"));
}

TEST_CASE("a saved quote is rechecked at the prices of another day, and the answer names the day") {
    FindingPlant plant;
    plant.done({"quote", demo_request("R-1001"), "--save", "--date", "2026-04-01"});
    CHECK(plant.ask({"quote", "recheck", "Q000001"}).exit_code == 0);
    const Ended ended = plant.ask({"quote", "recheck", "Q000001", "--date", "2026-10-15", "--json"});
    CHECK(ended.exit_code == 1);
    const Json json = Json::parse(ended.output);
    CHECK(json["date"] == "2026-04-01");
    CHECK(json["new_date"] == "2026-10-15");
    CHECK(json["saved_files"]["ends"] == "to-the-byte");
    CHECK(json["cause"] == "plant-files");
    const Json today = Json::parse(quote_demo({demo_request("R-1001")}, {"--json"}).output);
    for (std::size_t i = 0; i < 3; ++i)
        CHECK(json["quantities"][i]["now"]["price_per_thousand"] ==
              today["requests"][0]["quotes"][i]["price_per_thousand"]);
    const Ended text = plant.ask({"quote", "recheck", "Q000001", "--date", "2026-10-15"});
    CHECK_THAT(text.output, Contains("2026-04-01") && Contains("now at prices of") && Contains("2026-10-15") &&
                                Contains("by the prices of that day"));
    CHECK(plant.ask({"quote", "recheck", "Q000001", "--date", "today"}).exit_code <= 1);
    CHECK(plant.ask({"quote", "recheck", "Q000001", "--date", "soon"}).exit_code == 2);
}

TEST_CASE("a recheck uses the text of the style that was kept, and names what today's text changes") {
    FindingPlant plant;
    const auto write_style = [&](const std::string& along) {
        plant.write("styles.yaml",
                    "styles:\n  LID-1: {title: Lid, made_by: die-cutter, along: [" + along + "], across: [B + 40]}\n");
    };
    write_style("L + 40");
    const std::string file =
        plant.write("R-3.yaml",
                    "request: R-3\ndate: 2026-10-15\nstyle: LID-1\ninside: {length: 400, width: 300}\n"
                    "board: B-140\nquantities: [2000]\nmargin: 0.2\n");
    CHECK(plant.save(file) == "Q000001");
    CHECK(plant.ask({"quote", "recheck", "Q000001"}).exit_code == 0);
    write_style("L + 140");
    const Ended ended = plant.ask({"quote", "recheck", "Q000001", "--json"});
    INFO(ended.errors << ended.output);
    CHECK(ended.exit_code == 1);
    const Json json = Json::parse(ended.output);
    CHECK(json["saved_files"]["ends"] == "to-the-byte");
    CHECK(json["cause"] == "plant-files");
    REQUIRE(json["plant_files"].size() == 1);
    CHECK(json["plant_files"][0]["file"] == "style.yaml");
    CHECK_THAT(json["plant_files"][0]["was"].get<std::string>(), Contains("L + 40"));
    CHECK_THAT(json["plant_files"][0]["now"].get<std::string>(), Contains("L + 140"));
    CHECK(json["quantities"][0]["now"]["price_per_thousand"].get<double>() >
          json["quantities"][0]["was"]["price_per_thousand"].get<double>());
    CHECK(json["quantities"][0]["saved_files"] == json["quantities"][0]["was"]);
}
