// The proof: what it finds when a ledger was tampered with, and that it names the first bad entry.
#include "ledger/proof/verify.hpp"

#include <catch2/catch.hpp>

#include <filesystem>

#include "ledger/reading/entries.hpp"
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

// A ledger with all that one can hold: entries of two months, a reversal, a closed month, a count, quotes, orders.
void fill(const std::string& file) {
    auto store = Store::open_for_writing(file, IfMissing::create);
    static_cast<void>(post(store, DocumentStream(11, 1).take(40), "mara"));
    auto opening = floor_count("N1", day(2026, 9, 1), 650);
    opening.count->value = Money::of_ten_thousandths(77);
    static_cast<void>(post(store, std::vector<Draft>{opening}, "mara"));
    static_cast<void>(reverse(store, {5, day(2026, 9, 30), "typed twice", "mara"}));
    std::vector<QuoteDraft> quotes = {{"R-1001", {{"request.yaml", "one"}, {"papers.yaml", "two"}}}, {"R-1002", {}}};
    quotes[0].attributes = {{"customer", "Ashlar Tiles"}, {"length", 400'000}};
    static_cast<void>(save_quotes(store, quotes, "mara"));
    take_order(store, {"500123", "Q000001", 5000, {{"layout", "three"}}}, "mara");
    take_order(store, {"500124", "Q000002", 500, {}}, "mara");
    // Those that the stream's documents name.
    for (int number = 300000; number < 300006; ++number)
        take_order(store, {std::to_string(number), "Q000002", 500, {}}, "mara");
    static_cast<void>(close_month(store, {month(2026, 9), {"bale-yard"}, {}, "as it is", "mara"}));
    const std::vector<Draft> october = {paper_issue("P1", day(2026, 10, 2), 1200, 800),
                                        corrugator_run("R1", day(2026, 10, 3), "500123")};
    static_cast<void>(post(store, october, "mara"));
}

Proof proof_of(const std::string& file, const std::optional<std::string>& kept = std::nullopt) {
    return verify(Store::open_for_reading(file), kept);
}

class Tampering {
public:
    Tampering() { fill(sound_); }

    // The proof of a copy that was tampered with.
    Proof after(const std::string& sql) {
        fs::copy_file(sound_, copy_, fs::copy_options::overwrite_existing);
        forge(copy_, sql);
        return proof_of(copy_);
    }
    [[nodiscard]] const std::string& sound() const { return sound_; }
    [[nodiscard]] const std::string& copy() const { return copy_; }

private:
    LedgerFolder folder_;
    std::string sound_ = folder_.file(), copy_ = folder_.file("copy.db");
};

std::int64_t first_entry(const Proof& proof) {
    REQUIRE_FALSE(proof.findings.empty());
    return proof.findings[0].entry.value_or(-1);
}

}  // namespace

TEST_CASE("a sound ledger is proven whole, with its head") {
    const Tampering tampering;
    const auto proof = proof_of(tampering.sound());
    for (const auto& finding : proof.findings) UNSCOPED_INFO(finding.text);
    CHECK(proof.holds());
    CHECK(proof.entries == 54);
    CHECK(proof.head == head(Store::open_for_reading(tampering.sound()))->hash);
    CHECK_FALSE(proof.kept_at);
    CHECK(verify(Store::in_memory()).holds());
    CHECK(verify(Store::in_memory()).head.empty());
}

TEST_CASE("whichever column of whichever row is changed, the proof finds it") {
    Tampering tampering;
    int columns = 0;
    for (const auto& table : run_behind(tampering.sound(),
                                        "SELECT name FROM sqlite_schema WHERE type = 'table' "
                                        "AND name NOT LIKE 'sqlite%' ORDER BY name")) {
        const auto names = run_behind(
            tampering.sound(), "SELECT name FROM pragma_table_xinfo('" + table + "') WHERE hidden = 0 ORDER BY cid");
        for (const auto& column : names) {
            // In the middle of the table; a number grows by a million, so that it meets no other.
            const auto changed = "CASE typeof(" + column + ") WHEN 'integer' THEN " + column +
                                 " + 1000000 WHEN 'text' THEN " + column + " || 'x' WHEN 'blob' THEN cast(substr(" +
                                 column + ", 2) || x'00' AS BLOB) ELSE 7 END";
            // Tables without a row number are found by their key.
            const auto where = table.rfind("month_", 0) == 0 || table == "seal_stock"
                                   ? "(SELECT min(month) FROM " + table +
                                         ") = month AND grams = (SELECT max(grams) FROM " + table + ")"
                                   : "rowid = (SELECT rowid FROM " + table +
                                         " ORDER BY rowid LIMIT 1 OFFSET (SELECT "
                                         "count(*) / 2 FROM " +
                                         table + "))";
            INFO(table << "." << column);
            const auto proof = tampering.after("PRAGMA ignore_check_constraints = ON; UPDATE " + table + " SET " +
                                               column + " = " + changed + " WHERE " + where);
            CHECK_FALSE(proof.holds());
            ++columns;
        }
    }
    CHECK(columns > 70);
}

TEST_CASE("a row deleted from whichever table is found") {
    Tampering tampering;
    for (const auto& table : run_behind(tampering.sound(),
                                        "SELECT name FROM sqlite_schema WHERE type = 'table' "
                                        "AND name NOT LIKE 'sqlite%' ORDER BY name")) {
        INFO(table);
        const auto where = table.rfind("month_", 0) == 0 || table == "seal_stock"
                               ? "grams = (SELECT max(grams) FROM " + table + ")"
                               : "rowid = (SELECT min(rowid) FROM " + table + ")";
        CHECK_FALSE(tampering.after("DELETE FROM " + table + " WHERE " + where).holds());
    }
}

TEST_CASE("the first bad entry is named") {
    Tampering tampering;
    const auto edited = tampering.after("UPDATE entry SET note = 'nothing happened' WHERE id IN (17, 23)");
    CHECK(first_entry(edited) == 17);
    CHECK(edited.findings[0].text == "entry 17: was changed, or one before it: its hash does not match its content");
    CHECK(edited.findings[1].entry == 23);
    CHECK(first_entry(tampering.after("UPDATE movement SET grams = grams + 1 WHERE id = 9000")) == 9);
    CHECK(first_entry(tampering.after("DELETE FROM entry WHERE id = 12")) == 12);
    CHECK(first_entry(tampering.after("DELETE FROM movement WHERE id = 8000")) == 8);
    CHECK(first_entry(tampering.after("INSERT INTO movement SELECT 14099, from_account, to_account, material, cause, "
                                      "grams, money, day FROM movement WHERE id = 1000")) == 14);
    CHECK(first_entry(tampering.after("INSERT INTO expected VALUES (53900, 1, 5)")) == 53);
    CHECK(tampering
              .after("INSERT INTO movement SELECT 99000, from_account, to_account, material, cause, grams, money, day "
                     "FROM movement WHERE id = 1000")
              .findings[0]
              .text == "entry 99: a movement exists without its entry");
}

TEST_CASE("an entry whose hash was made to fit betrays itself at the next") {
    Tampering tampering;
    CHECK(first_entry(
              tampering.after("UPDATE entry SET hash = (SELECT hash FROM entry WHERE id = 20) WHERE id = 19")) == 19);
    // Two entries that changed their places.
    CHECK(
        first_entry(tampering.after("UPDATE entry SET id = 1000000 WHERE id = 30; UPDATE entry SET id = 30 WHERE id = "
                                    "31; UPDATE entry SET id = 31 WHERE id = 1000000")) == 30);
}

TEST_CASE("a head that was kept shows a tail that was cut off, which nothing else does") {
    Tampering tampering;
    const auto kept = proof_of(tampering.sound()).head;
    // Entries 53 and 54 with all that belongs to them, totals too: no link is broken.
    const auto cut = tampering.after(
        "DELETE FROM movement WHERE id >= 53000; DELETE FROM expected WHERE id >= 53000; DELETE FROM entry WHERE id >= "
        "53; "
        "DELETE FROM month_flow WHERE month = 202610; DELETE FROM month_detail WHERE month = 202610; "
        "DELETE FROM month_expected WHERE month = 202610");
    CHECK(cut.holds());
    const auto held = proof_of(tampering.copy(), kept);
    REQUIRE(held.findings.size() == 1);
    CHECK(held.findings[0].text ==
          "the kept head " + kept +
              " is no entry of this ledger: its end was cut off, its past was rewritten, or it is "
              "an old copy; it has 52 entries");
    // Posting on does not bring it back.
    {
        auto store = Store::open_for_writing(tampering.copy(), IfMissing::refuse);
        static_cast<void>(post(store, DocumentStream(99, 3, 5000).take(0), "mara"));
        static_cast<void>(post(store, std::vector<Draft>{paper_issue("P9", day(2026, 10, 2), 1)}, "mara"));
    }
    CHECK_FALSE(proof_of(tampering.copy(), kept).holds());
}

TEST_CASE("a head that was kept shows an old copy and a past that was written anew, and holds for what grew from it") {
    const LedgerFolder folder;
    auto store = Store::open_for_writing(folder.file(), IfMissing::create);
    static_cast<void>(post(store, DocumentStream(1).take(20), "mara"));
    const auto kept = head(store)->hash;
    static_cast<void>(post(store, DocumentStream(2, 2, 500).take(20), "mara"));
    const auto later = head(store)->hash;
    CHECK(verify(store, kept).kept_at == 20);
    CHECK(verify(store, later).kept_at == 40);

    auto old_copy = Store::in_memory();
    static_cast<void>(post(old_copy, DocumentStream(1).take(20), "mara"));
    CHECK(verify(old_copy).holds());
    CHECK_FALSE(verify(old_copy, later).holds());

    auto rewritten = Store::in_memory();
    auto drafts = DocumentStream(1).take(20);
    drafts[3].note = "nothing happened";
    static_cast<void>(post(rewritten, drafts, "mara"));
    CHECK(verify(rewritten).holds());
    CHECK_FALSE(verify(rewritten, kept).holds());
}

TEST_CASE("a kept head of either case is read, and what is no head is refused") {
    auto store = Store::in_memory();
    static_cast<void>(post(store, DocumentStream(1).take(3), "mara"));
    auto kept = head(store)->hash;
    for (auto& sign : kept) sign = static_cast<char>(std::toupper(static_cast<unsigned char>(sign)));
    CHECK(verify(store, kept).kept_at == 3);
    CHECK_THROWS_AS(verify(store, "c0ffee"), LedgerError);
    CHECK_THROWS_AS(verify(store, ""), LedgerError);
}

TEST_CASE("a closed month that was opened again, or holds something else, is found") {
    Tampering tampering;
    const auto reopened = tampering.after("DELETE FROM seal; DELETE FROM seal_stock");
    CHECK(first_entry(reopened) == 52);
    CHECK(reopened.findings[0].text == "entry 52: 2026-09: is closed by its entry, but not sealed");
    const auto restocked = tampering.after(
        "UPDATE seal_stock SET grams = grams + 1 WHERE account = (SELECT id FROM name "
        "WHERE text = 'floor')");
    CHECK(restocked.findings.at(0).text ==
          "entry 52: 2026-09: its stored closing stocks are not what its entries make");
    const auto sealed_alone = tampering.after("INSERT INTO seal VALUES (202612, 54)");
    CHECK(sealed_alone.findings.at(0).text == "2026-12: is sealed, but no entry closes it");
}

TEST_CASE("totals that are not what the entries make are named") {
    Tampering tampering;
    const auto proof = tampering.after(
        "UPDATE month_flow SET grams = 1 WHERE month = 202610 AND cause = 0 AND money = "
        "8000000");
    REQUIRE(proof.findings.size() == 1);
    CHECK(proof.findings[0].text ==
          "total of 2026-10, paper-store, C1, KL135: is wrong: found 1 g and 800 of money, the "
          "entries make 1200000 g and 800");
    CHECK_FALSE(proof.findings[0].entry);
}

TEST_CASE("a saved quote that was changed is named") {
    Tampering tampering;
    CHECK(tampering.after("UPDATE quote SET request = 'R-9' WHERE id = 1").findings.at(0).text ==
          "quote Q000001: was changed, or one before it: its hash does not match its content");
    CHECK(tampering.after("UPDATE content SET bytes = x'00' WHERE id = 1").findings.at(0).text ==
          "saved content 1: was changed: its hash does not match its bytes");
    CHECK(tampering.after("UPDATE taken_order SET quantity = 1 WHERE id = 2").findings.at(0).text ==
          "order 500124: was changed, or one before it: its hash does not match its content");
}
