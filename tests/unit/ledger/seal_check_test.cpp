// What is shown of a closed month, and what is sealed, held against the movements: a changed total, stock, entry or
// seal stops it, and is named.
#include "ledger/proof/seal_check.hpp"

#include <catch2/catch.hpp>
#include <filesystem>

#include "ledger/proof/verify.hpp"
#include "ledger/reading/entries.hpp"
#include "ledger/reading/month.hpp"
#include "ledger/writing/close.hpp"
#include "ledger/writing/posting.hpp"
#include "tests/unit/ledger/ledger_file.hpp"
#include "tests/unit/ledger/made_drafts.hpp"

using namespace flutebook;
using namespace flutebook::ledger;
using namespace flutebook::fixture;

namespace {

using Lines = std::vector<std::string>;

const Month sealed_september = month(2026, 9), sealed_october = month(2026, 10), open_november = month(2026, 11);

// Two closed months, and November open. Rows of October were posted before September was closed.
void fill_months(const std::string& file) {
    auto store = Store::open_for_writing(file, IfMissing::create);
    static_cast<void>(post(store, DocumentStream(11, 2).take(60), "mara"));
    static_cast<void>(close_month(store, {sealed_september, {}, {}, "as it is", "mara"}));
    const std::vector<Draft> later = {paper_issue("P1", day(2026, 10, 2), 1200, 800),
                                      corrugator_run("R1", day(2026, 10, 3), "500123"),
                                      paper_issue("P2", day(2026, 11, 2), 1200, 800)};
    static_cast<void>(post(store, later, "mara"));
    static_cast<void>(close_month(store, {sealed_october, {}, {}, "as it is", "mara"}));
    static_cast<void>(post(store, std::vector<Draft>{paper_issue("P3", day(2026, 11, 3), 7, 5)}, "mara"));
}

template <typename Act>
Lines refusal_lines(const Act& act) {
    try {
        act();
    } catch (const LedgerError& error) {
        CHECK(error.kind() == LedgerError::Kind::refused);
        return error.lines();
    }
    return {};
}

class ClosedMonths {
public:
    ClosedMonths() { fill_months(sound_); }

    // What is said of a month of a copy that was tampered with.
    Lines after(const std::string& sql, Month of) {
        std::filesystem::copy_file(sound_, copy_, std::filesystem::copy_options::overwrite_existing);
        forge(copy_, sql);
        return refusal_lines([&] { expect_seal_holds(Store::open_for_reading(copy_), of); });
    }
    [[nodiscard]] const std::string& copy() const { return copy_; }
    [[nodiscard]] const std::string& sound() const { return sound_; }

private:
    LedgerFolder folder_;
    std::string sound_ = folder_.file(), copy_ = folder_.file("copy.db");
};

bool names(const Lines& lines, const std::string& what) {
    for (const auto& line : lines)
        if (line.find(what) != std::string::npos) return true;
    return false;
}

}  // namespace

TEST_CASE("closed months and the open one after them are shown while their seals hold") {
    const ClosedMonths months;
    const auto store = Store::open_for_reading(months.sound());
    for (const auto& of : {month(2026, 8), sealed_september, sealed_october, open_november, month(2026, 12)})
        CHECK_NOTHROW(expect_seal_holds(store, of));
    CHECK(verify(store).holds());
}

TEST_CASE("one changed total of a closed month stops it from being shown, and is named") {
    ClosedMonths months;
    const std::string change =
        "UPDATE month_flow SET grams = 1 WHERE month = 202610 AND material = (SELECT id FROM name WHERE text = "
        "'KL135') "
        "AND from_account = (SELECT id FROM name WHERE text = 'paper-store') AND to_account = (SELECT id FROM name "
        "WHERE "
        "text = 'C1')";
    const auto lines = months.after(change, sealed_october);
    REQUIRE(lines.size() == 2);
    CHECK(lines[0] == months.copy() +
                          ": 2026-10 is closed, but differs from its seal: nothing of it is shown; run `flutebook "
                          "verify`, and restore a verified backup");
    CHECK(names(lines, ": total of 2026-10, paper-store, C1, KL135: is wrong: found 1 g and "));
    CHECK(months.after(change, sealed_september).empty());
    for (const auto* table : {"month_detail", "month_expected"}) {
        INFO(table);
        CHECK(names(months.after(std::string("UPDATE ") + table + " SET grams = grams + 1 WHERE month = 202610",
                                 sealed_october),
                    "total of 2026-10"));
        CHECK(names(months.after(std::string("DELETE FROM ") + table + " WHERE month = 202610", sealed_october),
                    "is missing"));
    }
}

TEST_CASE("a closed month whose movements and totals were changed together is not what was sealed") {
    ClosedMonths months;
    const auto lines = months.after(
        "UPDATE movement SET grams = grams + 1000 WHERE money = 8000000 AND day = 20261002;"
        "UPDATE month_flow SET grams = grams + 1000 WHERE month = 202610 AND (from_account, to_account, material, "
        "cause) "
        "= (SELECT from_account, to_account, material, cause FROM movement WHERE money = 8000000 AND day = 20261002);"
        "UPDATE month_detail SET grams = grams + 1000 WHERE month = 202610 AND (from_account, to_account, cause) = "
        "(SELECT from_account, to_account, cause FROM movement WHERE money = 8000000 AND day = 20261002)",
        sealed_october);
    CHECK(names(lines, ": was changed, or one before it"));
    CHECK(names(lines, "2026-10: its totals are not those that were sealed"));
    CHECK(names(lines, "2026-10: its closing stocks are not those that were sealed"));
}

TEST_CASE("a closed month's stocks, counts, entries and seal are held to what was sealed") {
    ClosedMonths months;
    CHECK(names(months.after("UPDATE seal_stock SET grams = grams + 1 WHERE month = 202610", sealed_october),
                "2026-10: its stored closing stocks are not what its entries make"));
    CHECK(names(months.after("DELETE FROM seal WHERE month = 202610; DELETE FROM seal_stock WHERE month = 202610",
                             sealed_october),
                "2026-10: is closed by its entry, but not sealed"));
    CHECK(names(
        months.after("DELETE FROM entry WHERE id = (SELECT entry FROM seal WHERE month = 202610)", sealed_october),
        "2026-10: no entry says what was sealed"));
    CHECK(names(months.after("UPDATE entry SET content = replace(content, 'totals ', 'totals 0') WHERE id = (SELECT "
                             "entry FROM seal WHERE month = 202610)",
                             sealed_october),
                "2026-10: no entry says what was sealed"));
    CHECK(names(months.after("UPDATE stock_count SET grams = grams + 1 WHERE day / 100 = 202610", sealed_october),
                ": was changed, or one before it"));
    CHECK(names(months.after("UPDATE entry SET note = 'nothing' WHERE id = (SELECT min(id) FROM entry WHERE month = "
                             "202610)",
                             sealed_october),
                ": was changed, or one before it"));
    CHECK(names(months.after("INSERT INTO movement SELECT 61900, from_account, to_account, material, cause, 5, 0, "
                             "20261002 FROM movement WHERE day = 20261002 LIMIT 1; INSERT INTO movement SELECT "
                             "62900, from_account, to_account, material, cause, 5, 0, 20261002 FROM movement WHERE "
                             "day = 20261002 LIMIT 1",
                             sealed_october),
                "is missing"));
}

TEST_CASE("an open month is not shown from the stock of a closed month that is not what was sealed") {
    ClosedMonths months;
    const auto lines = months.after("UPDATE seal_stock SET grams = grams + 1 WHERE month = 202610", open_november);
    REQUIRE(lines.size() == 2);
    CHECK(names(lines, "2026-11 cannot be shown: the closed month before it differs from its seal"));
    CHECK(lines[1] == months.copy() + ": 2026-10: its closing stocks are not those that were sealed");
    // A total of an open month is no matter of a seal; closing it finds it.
    CHECK(months.after("UPDATE month_flow SET grams = 1 WHERE month = 202611", open_november).empty());
}

TEST_CASE("a month with a changed total, or after a changed entry, is not closed") {
    ClosedMonths months;
    for (const auto* sql : {"UPDATE month_flow SET grams = grams + 5 WHERE month = 202611",
                            "UPDATE month_detail SET money = 0 WHERE month = 202611",
                            "UPDATE entry SET note = 'x' WHERE id = (SELECT max(id) FROM entry)",
                            "UPDATE seal_stock SET grams = grams + 1 WHERE month = 202610"}) {
        INFO(sql);
        static_cast<void>(months.after(sql, sealed_september));
        auto store = Store::open_for_writing(months.copy(), IfMissing::refuse);
        const auto newest = head(store)->entry;
        const auto lines = refusal_lines([&] {
            static_cast<void>(close_month(store, {open_november, {}, {}, "why", "mara"}));
        });
        CHECK(names(lines, ": 2026-11 is not closed: its totals differ from what was posted; run `flutebook verify`"));
        CHECK(lines.size() > 1);
        CHECK(head(store)->entry == newest);
        CHECK_FALSE(is_closed(store, open_november));
    }
    auto store = Store::open_for_writing(months.sound(), IfMissing::refuse);
    CHECK(close_month(store, {open_november, {}, {}, "", "mara"}).month == open_november);
    CHECK_NOTHROW(expect_seal_holds(store, open_november));
}
