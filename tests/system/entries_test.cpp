// The entries of a month, listed by the real program.
#include <fmt/format.h>

#include <catch2/catch.hpp>
#include <chrono>
#include <nlohmann/json.hpp>

#include "tests/system/face.hpp"

using namespace flutebook::fixture;
using Catch::Matchers::Contains;
using Json = nlohmann::ordered_json;

namespace {

// One quote saved; one row posted in October 2026, and undone.
class PlantWithEntries : public PlantCopy {
public:
    PlantWithEntries() {
        const auto rows = write("rows.csv",
                                "ref,date,shift,corrugator,paper,kg,note\n"
                                "N1,2026-10-03,early,C1,KL135,100,weighed late\n");
        for (const std::vector<std::string>& words :
             {std::vector<std::string>{"quote", demo_request("R-1001"), "--save"},
              {"post", rows},
              {"reverse", "N1", "--why", "typed twice"}})
            REQUIRE(ask(words).exit_code == 0);
    }
    [[nodiscard]] Ended ask(const std::vector<std::string>& words) const { return ask_at(folder(), words); }
    [[nodiscard]] Json entries(std::vector<std::string> words) const {
        words.insert(words.begin(), "entries");
        words.emplace_back("--json");
        const auto ended = ask(words);
        REQUIRE(ended.exit_code == 0);
        return Json::parse(ended.output)["entries"];
    }
};

std::string month_of_today() {
    const std::chrono::year_month_day today(std::chrono::floor<std::chrono::days>(std::chrono::system_clock::now()));
    return fmt::format("{}-{:02}", static_cast<int>(today.year()), static_cast<unsigned>(today.month()));
}

}  // namespace

TEST_CASE("the entries of a month are listed one by one, with what reversed them and why") {
    const PlantWithEntries plant;
    const Json entries = plant.entries({"2026-10"});
    const Json& row = entries.at(0);
    const Json& reversal = entries.at(1);
    CHECK(row["document"] == "paper");
    CHECK(row["ref"] == "N1");
    CHECK(row["centre"] == "C1");
    CHECK(row["note"] == "weighed late");
    CHECK(row["reversed_by"] == reversal["entry"]);
    CHECK(row["clock"].is_null());
    CHECK(reversal["document"] == "reversal");
    CHECK(reversal["reverses"] == row["entry"]);
    CHECK(reversal["note"] == "typed twice");
    const auto text = plant.ask({"entries", "2026-10"}).output;
    CHECK_THAT(text, Contains("paper N1") && Contains("reversed by entry 3") && Contains("reverses entry 2") &&
                         Contains("note: typed twice"));
    for (const auto& line : lines_of(text)) CHECK(line.size() <= 100);
}

TEST_CASE("entries that say what was saved are listed on request alone") {
    const PlantWithEntries plant;
    const auto saved = [&](const std::vector<std::string>& words) {
        std::size_t count = 0;
        for (const auto& entry : plant.entries(words)) count += entry["document"] == "saved" ? 1U : 0U;
        return count;
    };
    CHECK(saved({month_of_today()}) == 0);
    CHECK(saved({month_of_today(), "--saved"}) == 1);
}
