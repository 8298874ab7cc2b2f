// A document tried: every row beside what is wrong with it, and nothing written.
#include <catch2/catch.hpp>

#include "host/orders/order_record_json.hpp"
#include "host/services/posting/document_trial.hpp"
#include "ledger/reading/entries.hpp"
#include "ledger/reading/quotes.hpp"
#include "tests/unit/production/documents_bench.hpp"

using namespace flutebook;
using namespace flutebook::fixture;

namespace {

// A ledger in memory that took the order 4711.
struct TrialDesk {
    TrialDesk() : store(ledger::Store::in_memory()), plant(paper_plant()) {
        const std::vector<ledger::QuoteDraft> quotes = {{"R-1", {{"request.yaml", "request: R-1"}}}};
        static_cast<void>(ledger::save_quotes(store, quotes, "ada"));
        ledger::take_order(
            store, {"4711", "Q000001", 1000, {{orders::order_record_part, orders::to_json(box_order("4711"))}}}, "ada");
    }

    answers::DocumentTrial tried(const std::string& text) {
        const TextFile file(text);
        return services::try_document(plant, store, {{file.path()}, "ada", answers::PostOptions::Keep::all},
                                      "runs.csv");
    }

    ledger::Store store;
    plant::Plant plant;
};

}  // namespace

TEST_CASE("A document that can be posted is told with its rows, and nothing is written") {
    TrialDesk desk;
    const auto before = ledger::head(desk.store)->entry;
    const auto trial = desk.tried(paper_header + "\nP-1,2026-10-05,early,C1,KL140,500\n");
    REQUIRE(trial.answer);
    CHECK(trial.answer->posted == 1);
    CHECK(trial.answer->files.front().file == "runs.csv");
    CHECK(trial.heads.size() == 6);
    REQUIRE(trial.rows.size() == 1);
    CHECK(trial.rows[0].fields[5] == "500");
    CHECK(ledger::head(desk.store)->entry == before);
}

TEST_CASE("Each fault stands with its row, without the name of the file") {
    TrialDesk desk;
    const auto trial = desk.tried(paper_header +
                                  "\nP-1,2026-10-05,early,C1,KL140,500\nP-2,2026-10-05,early,C9,KL140,500\n"
                                  "P-3,2026-10-05,early,C1,KL140,many\n");
    CHECK_FALSE(trial.answer);
    CHECK(trial.all_rows == 3);
    REQUIRE(trial.rows.size() == 3);
    CHECK(trial.rows[0].faults.empty());
    REQUIRE(trial.rows[1].faults.size() == 1);
    CHECK(trial.rows[1].line == 3);
    CHECK(trial.rows[1].faults[0].rfind("corrugator: found `C9`", 0) == 0);
    CHECK(trial.rows[2].faults.size() == 1);
    CHECK(trial.faults.empty());
}

TEST_CASE("A document of no known kind is refused as a whole, by the name that it was given") {
    TrialDesk desk;
    const auto trial = desk.tried("what,ever\n1,2\n");
    CHECK_FALSE(trial.answer);
    REQUIRE(trial.faults.size() == 1);
    CHECK(trial.faults[0].find("/tmp/") == std::string::npos);
}

TEST_CASE("A long document shows its first rows, and every row that is wrong") {
    TrialDesk desk;
    std::string text = paper_header + "\n";
    for (int i = 0; i < 600; ++i) text += "P-" + std::to_string(i) + ",2026-10-05,early,C1,KL140,500\n";
    const auto trial = desk.tried(text + "P-last,2026-10-05,early,C9,KL140,500\n");
    CHECK(trial.all_rows == 601);
    REQUIRE(trial.rows.size() == services::most_shown_rows + 1);
    CHECK(trial.rows.back().faults.size() == 1);
}
