// Records of saved quotes: what a quote is found by and what became of it, chained, searched and proven.
#include "ledger/reading/records.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>
#include <random>

#include "ledger/proof/verify.hpp"
#include "ledger/reading/entries.hpp"
#include "ledger/reading/quote_search.hpp"
#include "ledger/writing/saved_entry.hpp"
#include "tests/unit/ledger/ledger_file.hpp"
#include "tests/unit/ledger/made_drafts.hpp"

using namespace flutebook;
using namespace flutebook::ledger;
using namespace flutebook::fixture;
using Catch::Matchers::Contains;

namespace {

namespace fs = std::filesystem;

const std::string ledger_of_schema_4 = FLUTEBOOK_SOURCE_DIR "/tests/system/kept/ledger-of-schema-4.db";

// A quote among many: everything about it follows from its number.
struct DrawnQuote {
    std::string customer, board, style, request;
    std::int64_t length, width;
};

DrawnQuote drawn(std::size_t number) {
    std::mt19937_64 random(number + 77);
    return {fmt::format("Customer {}", random() % 40),
            fmt::format("B-{}", 100 + random() % 5),
            random() % 3 == 0 ? "0203" : "0201",
            fmt::format("R-{}", random() % 700),
            static_cast<std::int64_t>(200'000 + random() % 400'000),
            static_cast<std::int64_t>(100'000 + random() % 300'000)};
}

QuoteDraft draft_of(const DrawnQuote& quote) {
    QuoteDraft draft{quote.request, {}};
    draft.attributes = {{"customer", quote.customer},
                        {"board", quote.board},
                        {"style", quote.style},
                        {"length", quote.length},
                        {"width", quote.width}};
    return draft;
}

// Saved a few at a time, an hour apart; every seventh is marked, every fourteenth a second time.
class DrawnLedger {
public:
    explicit DrawnLedger(std::size_t quotes) {
        std::vector<QuoteDraft> drafts;
        for (std::size_t i = 0; i < quotes; ++i) {
            quotes_.push_back(drawn(i));
            drafts.push_back(draft_of(quotes_.back()));
        }
        static_cast<void>(save_quotes(store_, drafts, "mara"));
        std::vector<RecordOfQuote> marks;
        states_.assign(quotes, "");
        for (std::size_t i = 0; i < quotes; i += 7) {
            say(marks, i, "won");
            if (i % 14 == 0) say(marks, i, i % 28 == 0 ? "lost" : "open");
        }
        add_records(store_, marks, "jonas");
    }

    [[nodiscard]] const Store& store() const { return store_; }

    // The newest quotes for which `is_wanted` holds, found by looking at each.
    [[nodiscard]] std::vector<std::string> by_hand(const auto& is_wanted, std::size_t limit) const {
        std::vector<std::string> numbers;
        for (std::size_t i = quotes_.size(); i > 0 && numbers.size() < limit; --i)
            if (is_wanted(quotes_[i - 1], states_[i - 1]))
                numbers.push_back(quote_number(static_cast<std::int64_t>(i)));
        return numbers;
    }

private:
    void say(std::vector<RecordOfQuote>& marks, std::size_t index, const std::string& state) {
        marks.push_back({quote_number(static_cast<std::int64_t>(index + 1)), {"mark", {{"state", state}}}});
        states_[index] = state;
    }

    SetClock clock_{1'792'000'000};
    Store store_ = Store::in_memory(clock_);
    std::vector<DrawnQuote> quotes_;
    std::vector<std::string> states_;
};

std::vector<std::string> numbers_of(const FoundQuotes& found) {
    std::vector<std::string> numbers;
    for (const auto& quote : found.quotes) numbers.push_back(quote.number);
    return numbers;
}

std::string save_one_found_by(Store& store, const std::string& request, std::vector<QuoteAttribute> attributes) {
    QuoteDraft draft{request, {{"answer.json", std::to_string(attributes.size())}}, {"answer.json"}};
    draft.attributes = std::move(attributes);
    return save_quotes(store, {&draft, 1}, "mara").front();
}

std::vector<std::string> findings_in(const std::string& file) {
    std::vector<std::string> lines;
    for (const auto& finding : verify(Store::open_for_reading(file)).findings) lines.push_back(finding.text);
    return lines;
}

std::string all_of(const std::vector<std::string>& lines) {
    return fmt::format("{}", fmt::join(lines, "\n"));
}

// Two quotes with what they are found by, one of them marked twice.
void fill_with_records(const std::string& file) {
    auto store = Store::open_for_writing(file, IfMissing::create);
    static_cast<void>(save_one_found_by(store, "R-1001", {{"customer", "Ashlar Tiles"}, {"length", 400'000}}));
    static_cast<void>(save_one_found_by(store, "R-1002", {{"customer", "Vellum Press"}, {"length", 300'000}}));
    const std::vector<RecordOfQuote> marks = {{"Q000001", {"mark", {{"state", "won"}}}},
                                              {"Q000001", {"mark", {{"state", "lost"}, {"why", "too dear"}}}}};
    add_records(store, {&marks[0], 1}, "mara");
    add_records(store, {&marks[1], 1}, "jonas");
}

}  // namespace

TEST_CASE("what a quote is found by is kept in the act that saves it, and one entry of the chain covers both") {
    const SetClock clock(1'792'000'000);
    auto store = Store::in_memory(clock);
    CHECK(save_one_found_by(store, "R-1001", {{"customer", "Ashlar Tiles"}, {"length", 400'000}}) == "Q000001");
    CHECK(head(store)->entry == 1);
    const auto saved = parse_saved(find_entry(store, 1)->draft.content);
    REQUIRE(saved);
    CHECK(saved->records == 1);
    CHECK(saved->records_head != Hash{});
    CHECK(find_entry(store, 1)->draft.ref == "1 quotes, 0 orders, 1 records");
    const auto records = records_of(store, "Q000001");
    REQUIRE(records.size() == 1);
    CHECK(records[0].kind == found_by_kind);
    CHECK(records[0].who == "mara");
    CHECK(records[0].attributes ==
          std::vector<QuoteAttribute>{{"customer", "Ashlar Tiles"}, {"length", std::int64_t{400'000}}});
    CHECK(quotes_without(store, found_by_kind).empty());
    // The same quote again adds nothing.
    CHECK(save_one_found_by(store, "R-1001", {{"customer", "Ashlar Tiles"}, {"length", 400'000}}) == "Q000001");
    CHECK(head(store)->entry == 1);
    CHECK(verify(store).holds());
}

TEST_CASE("records of a quote are only added, and the newest counts") {
    const LedgerFolder folder;
    fill_with_records(folder.file());
    const auto store = Store::open_for_reading(folder.file());
    const auto records = records_of(store, "Q000001");
    REQUIRE(records.size() == 3);
    CHECK(records[1].attributes == std::vector<QuoteAttribute>{{"state", "won"}});
    CHECK(records[2].who == "jonas");
    const auto found = find_quote_records(store, "Q000001");
    REQUIRE(found);
    CHECK(found->text("state") == "lost");
    CHECK(found->text("why") == "too dear");
    CHECK(found->text("customer") == "Ashlar Tiles");
    CHECK(found->number_of("length") == 400'000);
    CHECK(verify(store).holds());
}

TEST_CASE("every search finds what looking at each quote finds, newest first, among few and among many") {
    const DrawnLedger ledger(3500);
    const auto check = [&](const std::vector<QuoteCondition>& conditions, const auto& is_wanted) {
        for (const std::size_t limit : {1U, 20U, 5000U}) {
            const auto found = find_quotes(ledger.store(), {conditions, std::nullopt, limit});
            CHECK(numbers_of(found) == ledger.by_hand(is_wanted, limit));
            CHECK(found.has_more == (ledger.by_hand(is_wanted, limit + 1).size() > limit));
        }
    };
    using Quote = DrawnQuote;
    using State = std::string;
    check({}, [](const Quote&, const State&) { return true; });
    check({RequestIs{"R-17"}}, [](const Quote& quote, const State&) { return quote.request == "R-17"; });
    check({AttributeIs{"board", "B-102"}}, [](const Quote& quote, const State&) { return quote.board == "B-102"; });
    check({AttributeIs{"board", "B-999"}}, [](const Quote&, const State&) { return false; });
    check({AttributeIs{"nosuch", "B-102"}}, [](const Quote&, const State&) { return false; });
    check({AttributeHolds{"customer", "cUSTOMER 3"}},
          [](const Quote& quote, const State&) { return quote.customer.rfind("Customer 3", 0) == 0; });
    check({AttributeWithin{"length", 300'000, 310'000}, AttributeWithin{"width", 150'000, 350'000}},
          [](const Quote& quote, const State&) {
              return quote.length >= 300'000 && quote.length <= 310'000 && quote.width >= 150'000 &&
                     quote.width <= 350'000;
          });
    using IfUnsaid = NewestIs::IfUnsaid;
    check({NewestIs{"state", "won", IfUnsaid::differs}},
          [](const Quote&, const State& state) { return state == "won"; });
    check({NewestIs{"state", "lost", IfUnsaid::differs}, AttributeIs{"style", "0203"}},
          [](const Quote& quote, const State& state) { return state == "lost" && quote.style == "0203"; });
    check({NewestIs{"state", "open", IfUnsaid::matches}, AttributeIs{"board", "B-101"}},
          [](const Quote& quote, const State& state) {
              return (state.empty() || state == "open") && quote.board == "B-101";
          });
    const auto day_of_saving = day(2026, 10, 14);
    check({SavedBetween{day_of_saving, day_of_saving}}, [](const Quote&, const State&) { return true; });
    check({SavedBetween{day(2026, 10, 15), std::nullopt}}, [](const Quote&, const State&) { return false; });
}

TEST_CASE("pages follow one another without a gap, and each quote knows its revision and the one before it") {
    const DrawnLedger ledger(2600);
    QuoteSearch search{{AttributeIs{"style", "0201"}}, std::nullopt, 300};
    std::vector<std::string> paged;
    for (bool has_more = true; has_more;) {
        const auto page = find_quotes(ledger.store(), search);
        for (const auto& number : numbers_of(page)) paged.push_back(number);
        has_more = page.has_more;
        search.before = paged.back();
    }
    CHECK(paged == ledger.by_hand([](const auto& quote, const auto&) { return quote.style == "0201"; }, 10'000));
    const auto revisions = find_quotes(ledger.store(), {{RequestIs{"R-17"}}, std::nullopt, 100}).quotes;
    REQUIRE(revisions.size() > 1);
    for (std::size_t i = 0; i < revisions.size(); ++i) {
        CHECK(revisions[i].revision == static_cast<std::int64_t>(revisions.size() - i));
        CHECK(revisions[i].previous ==
              (i + 1 < revisions.size() ? std::optional(revisions[i + 1].number) : std::nullopt));
    }
    CHECK_THROWS_AS(find_quotes(ledger.store(), {{}, "R-17", 5}), LedgerError);
}

TEST_CASE("a record that was changed, taken away, moved to another quote or added by hand is found") {
    const LedgerFolder folder;
    fill_with_records(folder.file("sound.db"));
    REQUIRE(findings_in(folder.file("sound.db")).empty());
    const auto after = [&](const std::string& sql) {
        for (const auto* end : {"", "-wal", "-shm"}) fs::remove(folder.file() + end);
        fs::copy_file(folder.file("sound.db"), folder.file());
        forge(folder.file(), sql);
        return all_of(findings_in(folder.file()));
    };
    const std::string changed = "was changed, or one before it";
    CHECK_THAT(after("UPDATE quote_attribute SET text = 'won' WHERE text = 'lost'"),
               Contains("record 4 of quote Q000001: " + changed));
    CHECK_THAT(after("UPDATE quote_attribute SET number = 400001 WHERE number = 400000"),
               Contains("record 1 of quote Q000001: " + changed));
    CHECK_THAT(after("UPDATE quote_record SET quote = 2 WHERE id = 3"), Contains("record 3 of quote Q000002"));
    CHECK_THAT(after("UPDATE quote_attribute SET quote = 2 WHERE id = 3000"),
               Contains("record 3 of a quote: one of its attributes is of quote Q000002"));
    CHECK_THAT(after("UPDATE quote_record SET written = written + 1 WHERE id = 4"), Contains("record 4"));
    CHECK_THAT(after("DELETE FROM quote_attribute WHERE id >= 4000; DELETE FROM quote_record WHERE id = 4"),
               Contains("the 4 records of quotes that were kept then are gone or were changed"));
    CHECK_THAT(after("DELETE FROM quote_record WHERE id = 4"), Contains("exist without their"));
    CHECK_THAT(after("INSERT INTO quote_attribute VALUES (4002, 1, 1, 'x', NULL)"), Contains("record 4"));
    CHECK_THAT(after("INSERT INTO quote_record SELECT 5, 1, kind, who, written, hash FROM quote_record WHERE id = 4"),
               Contains("record 5"));
}

TEST_CASE("the file itself refuses to change a record, and the program refuses what is no record") {
    const LedgerFolder folder;
    fill_with_records(folder.file());
    for (const auto* sql : {"UPDATE quote_record SET who = 0", "DELETE FROM quote_attribute",
                            "INSERT INTO quote_record VALUES (9, 1, 0, 0, 0, zeroblob(32))",
                            "INSERT OR REPLACE INTO quote_attribute VALUES (1000, 1, 1, 'x', NULL)"})
        CHECK_THROWS_WITH(run_behind(folder.file(), sql), Contains("record of a quote"));
    auto store = Store::open_for_writing(folder.file(), IfMissing::refuse);
    const auto before = head(store)->hash;
    const std::vector<RecordOfQuote> wrong = {{"Q000009", {"mark", {{"state", "won"}}}},
                                              {"Q1", {"mark", {{"state", "won"}}}},
                                              {"Q000001", {"mark", {}}},
                                              {"Q000001", {"", {{"state", "won"}}}},
                                              {"Q000001", {"mark", {{"", "won"}}}},
                                              {"Q000001", {"mark", {{"a", "1"}, {"a", "2"}}}},
                                              {"Q000001", {"mark", {{"why", "turned \xE2\x80\xAE round"}}}},
                                              {"Q000001", {"mark", {{"why", std::string(10'001, 'x')}}}}};
    for (const auto& record : wrong) {
        // With a good one before it: neither is kept.
        const std::vector<RecordOfQuote> both = {{"Q000001", {"mark", {{"state", "won"}}}}, record};
        CHECK_THROWS_AS(add_records(store, both, "mara"), LedgerError);
    }
    CHECK(head(store)->hash == before);
    CHECK(records_of(store, "Q000001").size() == 3);
}

TEST_CASE("a ledger of version 4 is brought up to date, its heads still verify, and its quotes wait to be found") {
    const LedgerFolder folder;
    fs::copy_file(ledger_of_schema_4, folder.file());
    REQUIRE(run_behind(folder.file(), "PRAGMA user_version") == std::vector<std::string>{"4"});
    const std::string kept = run_behind(folder.file(), "SELECT lower(hex(hash)) FROM entry ORDER BY id DESC").front();
    auto store = Store::open_for_writing(folder.file(), IfMissing::refuse);
    CHECK(verify(store, kept).kept_at == 14);
    const auto waiting = quotes_without(store, found_by_kind);
    CHECK(waiting.size() == 13);
    CHECK(find_quotes(store, {{RequestIs{"R-1001"}}, std::nullopt, 5}).quotes.size() == 2);
    std::vector<RecordOfQuote> records;
    for (const auto& number : waiting) records.push_back({number, {found_by_kind, {{"board", "B-140"}}}});
    add_records(store, records, "mara");
    CHECK(quotes_without(store, found_by_kind).empty());
    CHECK(find_quotes(store, {{AttributeIs{"board", "B-140"}}, std::nullopt, 50}).quotes.size() == 13);
    const auto proof = verify(store, kept);
    CHECK(proof.holds());
    CHECK(proof.kept_at == 14);
    CHECK(proof.entries == 15);
}
