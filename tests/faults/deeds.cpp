#include "tests/faults/deeds.hpp"

#include "ledger/reading/quotes.hpp"
#include "ledger/reading/records.hpp"
#include "ledger/store/migrations.hpp"
#include "ledger/values/sha256.hpp"
#include "ledger/writing/close.hpp"
#include "ledger/writing/entry_writer.hpp"
#include "ledger/writing/posting.hpp"
#include "tests/unit/ledger/ledger_file.hpp"
#include "tests/unit/ledger/made_drafts.hpp"

namespace flutebook::fixture {

using namespace ledger;

const Clock& still_clock() {
    static const SetClock clock;
    return clock;
}

void make_ledger(const std::string& file, std::uint64_t seed, std::size_t documents) {
    auto store = Store::open_for_writing(file, IfMissing::create, still_clock());
    static_cast<void>(post(store, DocumentStream(seed).take(documents), writer));
}

void make_old_ledger(const std::string& file, std::uint64_t seed, std::size_t documents) {
    Database database(file, Database::Access::writing);
    database.set_guards();
    migrate(database, migrations().first(1));
    database.run("ALTER TABLE entry ADD COLUMN clock INTEGER");  // today's writer fills it; version 1 does not have it
    EntryWriter entries(database);
    database.run("BEGIN IMMEDIATE");
    entries.begin();
    for (const auto& draft : DocumentStream(seed).take(documents)) entries.add(draft, {writer, still_clock().now()});
    entries.write_totals();
    database.run("ALTER TABLE entry DROP COLUMN clock");
    database.run("COMMIT");
}

void close_september(Store& store) {
    Close close;
    close.month = month(2026, 9);
    close.note = "as counted";
    close.who = writer;
    for (const auto* account : {"C1", "floor"}) {
        Draft draft;
        draft.kind = "difference";
        draft.ref = std::string("2026-09 ") + account;
        draft.content = draft.ref;
        draft.date = day(2026, 9, 30);
        draft.movements = {{"unexplained", account, "board", "", Grams::of(12'345), Money()}};
        close.differences.push_back(draft);
    }
    static_cast<void>(close_month(store, close));
}

void save_quotes_and_order(Store& store) {
    std::vector<QuoteDraft> quotes;
    for (const auto* request : {"R-1001", "R-1002", "R-1003"})
        quotes.push_back(
            {request, {{"request.yaml", std::string(20'000, request[5])}, {"papers.yaml", "papers: {}\n"}}});
    for (auto& quote : quotes) quote.attributes = {{"customer", "Ashlar Tiles"}, {"length", 400'000}};
    if (quote_numbers(store).empty()) static_cast<void>(save_quotes(store, quotes, writer));
    if (!find_order(store, "500123"))
        take_order(store, {"500123", "Q000001", 5000, {{"layout", std::string(20'000, '2')}}}, writer);
}

void mark_quotes(Store& store) {
    const std::string reason(5'000, 'w');
    for (const auto& quote : quote_numbers(store)) {
        const auto said = records_of(store, quote);
        const RecordOfQuote lost = {quote, {"mark", {{"state", "lost"}, {"why", reason}}}};
        if (said.size() < 2) add_records(store, {&lost, 1}, writer);
    }
}

std::string contents(const std::string& file) {
    std::string text;
    for (const auto& table : run_behind(file,
                                        "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE "
                                        "'sqlite%' ORDER BY name")) {
        std::string columns;
        for (const auto& column :
             run_behind(file, "SELECT name FROM pragma_table_xinfo('" + table + "') WHERE hidden = 0 ORDER BY cid"))
            columns += (columns.empty() ? "quote(" : " || ' ' || quote(") + column + ")";
        text += table + "\n";
        for (const auto& row : run_behind(file, "SELECT " + columns + " AS row FROM " + table + " ORDER BY row"))
            text += row + "\n";
    }
    return to_hex(sha256(text));
}

}  // namespace flutebook::fixture
