// What is saved stands in the chain of entries: the one head covers quotes and orders, and what is gone is found.
#include "ledger/writing/saved_entry.hpp"

#include <catch2/catch.hpp>
#include <filesystem>

#include "ledger/proof/verify.hpp"
#include "ledger/reading/entries.hpp"
#include "ledger/reading/month.hpp"
#include "ledger/reading/quotes.hpp"
#include "ledger/writing/close.hpp"
#include "ledger/writing/posting.hpp"
#include "ledger/writing/reversal.hpp"
#include "tests/unit/ledger/ledger_file.hpp"
#include "tests/unit/ledger/made_drafts.hpp"

using namespace flutebook;
using namespace flutebook::ledger;
using namespace flutebook::fixture;

namespace {

namespace fs = std::filesystem;

const std::string kept_ledger = FLUTEBOOK_SOURCE_DIR "/tests/system/kept/ledger-of-1.0.0.db";

std::string save_one(Store& store, const std::string& request, const std::string& answer = "{}") {
    const QuoteDraft draft{
        request, {{"request.yaml", "request: " + request}, {"answer.json", answer}}, {"request.yaml", "answer.json"}};
    return save_quotes(store, {&draft, 1}, "mara").front();
}

// Two quotes, an order, a document for it; then another quote and another order.
void fill_saved(const std::string& file) {
    auto store = Store::open_for_writing(file, IfMissing::create);
    static_cast<void>(save_one(store, "R-1001"));
    static_cast<void>(save_one(store, "R-1002"));
    take_order(store, {"500123", "Q000001", 5000, {}}, "mara");
    static_cast<void>(post(store, std::vector<Draft>{corrugator_run("R1", day(2026, 10, 3), "500123")}, "mara"));
    static_cast<void>(save_one(store, "R-1003"));
    take_order(store, {"500124", "Q000003", 500, {}}, "mara");
}

std::vector<std::string> findings_of(const std::string& file, const std::optional<std::string>& kept = std::nullopt) {
    std::vector<std::string> lines;
    for (const auto& finding : verify(Store::open_for_reading(file), kept).findings) lines.push_back(finding.text);
    return lines;
}

bool has(const std::vector<std::string>& lines, const std::string& what) {
    for (const auto& line : lines)
        if (line.find(what) != std::string::npos) return true;
    return false;
}

class SavedLedger {
public:
    SavedLedger() { fill_saved(sound_); }
    std::vector<std::string> after(const std::string& sql) {
        fs::copy_file(sound_, copy_, fs::copy_options::overwrite_existing);
        forge(copy_, sql);
        return findings_of(copy_);
    }
    [[nodiscard]] const std::string& sound() const { return sound_; }

private:
    LedgerFolder folder_;
    std::string sound_ = folder_.file(), copy_ = folder_.file("copy.db");
};

}  // namespace

TEST_CASE("each act of saving adds one entry with the heads of both chains, dated today, which moves nothing") {
    const SetClock clock(1'792'000'000);
    auto store = Store::in_memory(clock);
    CHECK(save_one(store, "R-1001") == "Q000001");
    const auto first = find_entry(store, 1);
    REQUIRE(first);
    CHECK(first->draft.kind == "saved");
    CHECK(first->draft.ref == "1 quotes, 0 orders");
    CHECK(first->draft.date == day(2026, 10, 14));
    CHECK(first->draft.movements.empty());
    take_order(store, {"500123", "Q000001", 5000, {}}, "jonas");
    const auto second = find_entry(store, 2);
    REQUIRE(second);
    CHECK(second->draft.ref == "1 quotes, 1 orders");
    CHECK(second->who == "jonas");
    const auto heads = parse_saved(second->draft.content);
    REQUIRE(heads);
    CHECK(heads->quotes == 1);
    CHECK(heads->quotes_head == parse_saved(first->draft.content)->quotes_head);
    CHECK(heads->orders_head != Hash{});
    const std::vector<QuoteDraft> several = {{"R-1002", {}}, {"R-1003", {}}};
    static_cast<void>(save_quotes(store, several, "mara"));
    CHECK(head(store)->entry == 3);
    CHECK(verify(store, head(store)->hash).kept_at == 3);
}

TEST_CASE("the same request with the same answer keeps its number, and nothing is added") {
    auto store = Store::in_memory();
    CHECK(save_one(store, "R-1001") == "Q000001");
    CHECK(save_one(store, "R-1001", "{dearer}") == "Q000002");
    CHECK(save_one(store, "R-1002") == "Q000003");
    const auto before = head(store)->hash;
    CHECK(save_one(store, "R-1001") == "Q000001");
    CHECK(save_one(store, "R-1001", "{dearer}") == "Q000002");
    CHECK(head(store)->hash == before);
    CHECK(quote_numbers(store).size() == 3);
    // Together with one that is new: a run that was broken off is done again.
    const std::vector<QuoteDraft> drafts = {
        {"R-1002", {{"request.yaml", "request: R-1002"}, {"answer.json", "{}"}}, {"request.yaml", "answer.json"}},
        {"R-1004", {{"request.yaml", "request: R-1004"}, {"answer.json", "{}"}}, {"request.yaml", "answer.json"}}};
    CHECK(save_quotes(store, drafts, "mara") == std::vector<std::string>{"Q000003", "Q000004"});
    CHECK(verify(store).holds());
}

TEST_CASE("a head that was kept shows quotes and orders that were cut off since the last close") {
    SavedLedger ledger;
    const auto kept = verify(Store::open_for_reading(ledger.sound())).head;
    CHECK(findings_of(ledger.sound(), kept).empty());
    const std::string cut =
        "DELETE FROM taken_order WHERE number = '500124'; DELETE FROM quote_part WHERE id >= 3000; DELETE FROM quote "
        "WHERE id = 3;";
    const auto gone = ledger.after(cut);
    CHECK(has(gone, "entry 5: the 3 quotes that were saved then are gone or were changed"));
    CHECK(has(gone, "entry 6: the 2 orders that were taken then are gone or were changed"));
    // With the entries that knew them, only the head shows it.
    const auto all_gone = cut + "DELETE FROM entry WHERE id >= 5; DELETE FROM name WHERE text = '500124'";
    CHECK(ledger.after(all_gone).empty());
    LedgerFolder folder;
    fs::copy_file(ledger.sound(), folder.file());
    forge(folder.file(), all_gone);
    CHECK(has(findings_of(folder.file(), kept), "is no entry of this ledger"));
}

TEST_CASE("quotes and orders that no entry knows are found, and entries that say what was not saved") {
    SavedLedger ledger;
    CHECK(has(ledger.after("DELETE FROM entry WHERE id = 6"), "does not know the last of them"));
    CHECK(has(ledger.after("UPDATE entry SET content = 'quotes 9' WHERE id = 6"),
              "entry 6: does not say what was "
              "saved"));
}

TEST_CASE("an entry whose order is gone is named") {
    SavedLedger ledger;
    const auto lines = ledger.after("DELETE FROM taken_order WHERE number = '500123'");
    CHECK(has(lines, "entry 4: names order 500123, which is not there; so do 1 entries in all"));
    CHECK(has(ledger.after("DELETE FROM taken_order; DELETE FROM quote_part; DELETE FROM quote"),
              "entry 4: names order 500123, which is not there"));
}

TEST_CASE("a ledger of version 2 gets one such entry with its first write, and heads kept before still verify") {
    const LedgerFolder folder;
    fs::copy_file(kept_ledger, folder.file());
    REQUIRE(run_behind(folder.file(), "PRAGMA user_version") == std::vector<std::string>{"2"});
    const auto kept = verify(Store::open_for_reading(folder.file())).head;
    const auto entries = verify(Store::open_for_reading(folder.file())).entries;
    for (const auto* ref : {"Z1", "Z2"}) {
        auto store = Store::open_for_writing(folder.file(), IfMissing::refuse);
        static_cast<void>(post(store, std::vector<Draft>{paper_issue(ref, day(2027, 1, 4), 5)}, "mara"));
    }
    const auto proof = verify(Store::open_for_reading(folder.file()), kept);
    for (const auto& finding : proof.findings) UNSCOPED_INFO(finding.text);
    CHECK(proof.holds());
    CHECK(proof.kept_at == entries);
    CHECK(proof.entries == entries + 3);
    CHECK(find_entry(Store::open_for_reading(folder.file()), entries + 1)->draft.kind == "saved");
    CHECK(find_quote(Store::open_for_reading(folder.file()), "Q000001")->parts.size() > 5);
}

TEST_CASE("what says what was saved makes no month, holds up no close, and cannot be posted or reversed") {
    const SetClock clock(1'792'000'000);
    auto store = Store::in_memory(clock);
    static_cast<void>(save_one(store, "R-1001"));
    CHECK(months(store).empty());
    static_cast<void>(post(store, std::vector<Draft>{paper_issue("P1", day(2026, 12, 3), 5)}, "mara"));
    CHECK(months(store) == std::vector<Month>{month(2026, 12)});
    static_cast<void>(close_month(store, {month(2026, 12), {}, {}, "", "mara"}));
    // October, today's month, is closed along with December: the next is dated on the first open day.
    static_cast<void>(save_one(store, "R-1002"));
    CHECK(find_entry(store, head(store)->entry)->draft.date == day(2027, 1, 1));
    CHECK_THROWS_AS(reverse(store, {1, day(2027, 1, 2), "why", "mara"}), LedgerError);
    Draft forged;
    forged.kind = "saved";
    forged.ref = forged.content = "9 quotes, 9 orders";
    forged.date = day(2027, 1, 1);
    CHECK_THROWS_AS(post(store, std::vector<Draft>{forged}, "mara"), LedgerError);
    CHECK(verify(store).holds());
}

TEST_CASE("a large content is kept compressed, under the hash of what it is, and read as it was") {
    const LedgerFolder folder;
    std::string answer;
    for (int i = 0; i < 2000; ++i) answer += "{\"quantity\": " + std::to_string(i) + ", \"cost\": 1.25},\n";
    {
        auto store = Store::open_for_writing(folder.file(), IfMissing::create);
        static_cast<void>(save_one(store, "R-1001", answer));
        CHECK(find_quote(store, "Q000001")->parts[1].content == answer);
        CHECK(verify(store).holds());
    }
    const auto row = run_behind(folder.file(), "SELECT length(bytes) * 4 < size FROM content WHERE size IS NOT NULL");
    CHECK(row == std::vector<std::string>{"1"});
    // Small ones stay as they are.
    CHECK(run_behind(folder.file(), "SELECT count(*) FROM content WHERE size IS NULL") ==
          std::vector<std::string>{"1"});
    for (const auto* sql : {"UPDATE content SET size = size + 1 WHERE size IS NOT NULL",
                            "UPDATE content SET bytes = cast(substr(bytes, 1, 100) AS BLOB) WHERE size IS NOT NULL",
                            "UPDATE content SET size = NULL", "UPDATE content SET size = 99999999999"}) {
        INFO(sql);
        const LedgerFolder other;
        fs::copy_file(folder.file(), other.file());
        forge(other.file(), sql);
        CHECK(has(findings_of(other.file()), "was changed: its hash does not match its bytes"));
    }
}
