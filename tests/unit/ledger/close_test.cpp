// Closing a month, and what a closed month refuses.
#include "ledger/writing/close.hpp"

#include <catch2/catch.hpp>

#include "ledger/proof/verify.hpp"
#include "ledger/reading/entries.hpp"
#include "ledger/reading/month.hpp"
#include "ledger/reading/quotes.hpp"
#include "ledger/writing/posting.hpp"
#include "ledger/writing/sealed_content.hpp"
#include "tests/unit/ledger/made_drafts.hpp"

using namespace flutebook;
using namespace flutebook::ledger;
using namespace flutebook::fixture;

namespace {

using Lines = std::vector<std::string>;

Lines refusal_of(Store& store, const Close& close) {
    try {
        static_cast<void>(close_month(store, close));
    } catch (const LedgerError& error) {
        CHECK(error.kind() == LedgerError::Kind::refused);
        return error.lines();
    }
    return {};
}

Close closing(Month of) {
    return {of, {"C1", "floor", "loose-scrap"}, {}, "", "mara"};
}

Store with_october() {
    auto store = Store::in_memory();
    const std::vector<Draft> drafts = {paper_issue("P1", day(2026, 10, 2), 2000, 1300),
                                       corrugator_run("R1", day(2026, 10, 3), "500123")};
    static_cast<void>(post(store, drafts, "mara"));
    return store;
}

}  // namespace

TEST_CASE("closing a month seals it with an entry of its own, whose hash is the head") {
    auto store = with_october();
    auto close = closing(month(2026, 10));
    close.note = "the yard scale was being repaired";
    const auto seal = close_month(store, close);
    CHECK(seal.entry == 3);
    CHECK(seal.head == head(store)->hash);
    CHECK(seal.note == "the yard scale was being repaired");
    CHECK(seal.who == "mara");
    CHECK(is_closed(store, month(2026, 10)));
    CHECK(is_closed(store, month(2026, 9)));
    CHECK_FALSE(is_closed(store, month(2026, 11)));
    CHECK(seal_of(store, month(2026, 10))->entry == 3);
    CHECK_FALSE(seal_of(store, month(2026, 9)));
    CHECK(last_seal(store)->month == month(2026, 10));
    const auto entry = find_entry(store, 3);
    CHECK(entry->draft.kind == "close");
    CHECK(entry->draft.ref == "2026-10");
    CHECK(entry->draft.date == day(2026, 10, 31));
    const auto content = parse_sealed(entry->draft.content);
    REQUIRE(content);
    CHECK(content->inner_accounts == close.inner_accounts);
    CHECK(content->totals ==
          totals_hash(month(2026, 10), flows(store, month(2026, 10)), expected_losses(store, month(2026, 10))));
    CHECK(content->stocks == stocks_hash(month(2026, 10), balances_before(store, month(2026, 11))));
    CHECK(verify(store, seal.head).kept_at == 3);
}

TEST_CASE("a closed month, and every month before it, takes no document; the same row again is skipped") {
    auto store = with_october();
    static_cast<void>(close_month(store, closing(month(2026, 10))));
    const std::vector<Draft> late = {paper_issue("P7", day(2026, 10, 31), 5), paper_issue("P8", day(2026, 9, 1), 5),
                                     paper_issue("P1", day(2026, 10, 2), 2000, 1300),
                                     paper_issue("P9", day(2026, 11, 1), 5)};
    const auto batch = post(store, late, "mara");
    CHECK(std::get<MonthClosed>(batch.added[0]).last_closed == month(2026, 10));
    CHECK(std::holds_alternative<MonthClosed>(batch.added[1]));
    CHECK(std::get<AlreadyPosted>(batch.added[2]).number == 1);
    CHECK(std::holds_alternative<Posted>(batch.added[3]));
    CHECK(batch.is_refused());
    CHECK(head(store)->entry == 3);
}

TEST_CASE("months are closed in their order, each once") {
    auto store = with_october();
    static_cast<void>(post(store, std::vector<Draft>{paper_issue("P0", day(2026, 8, 31), 5)}, "mara"));
    CHECK(refusal_of(store, closing(month(2026, 10))) ==
          Lines{"a ledger in memory: 2026-08 is still open; close it before 2026-10"});
    // September holds nothing: it is closed along with October.
    static_cast<void>(close_month(store, closing(month(2026, 8))));
    static_cast<void>(close_month(store, closing(month(2026, 10))));
    CHECK(is_closed(store, month(2026, 9)));
    CHECK(refusal_of(store, closing(month(2026, 10))) == Lines{"a ledger in memory: 2026-10 is closed already"});
    CHECK(refusal_of(store, closing(month(2026, 9))) == Lines{"a ledger in memory: 2026-09 is closed already"});
    CHECK(verify(store).holds());
}

TEST_CASE("a month does not close while an inner account is below zero") {
    auto store = Store::in_memory();
    static_cast<void>(post(store, std::vector<Draft>{corrugator_run("R1", day(2026, 10, 3), "500123")}, "mara"));
    auto close = closing(month(2026, 10));
    CHECK(refusal_of(store, close) ==
          Lines{"a ledger in memory: C1 ends 2026-10 below zero: found -960 kg; count it, or post what is missing"});
    CHECK_FALSE(last_seal(store));
    Draft found;
    found.kind = "difference";
    found.ref = "2026-10 C1";
    found.content = "C1";
    found.date = day(2026, 10, 31);
    found.movements = {{"unexplained", "C1", "board", "", Grams::of(960'000), Money()}};
    close.differences = {found};
    const auto seal = close_month(store, close);
    CHECK(seal.entry == 3);
    CHECK(find_entry(store, 2)->draft.kind == "difference");
    CHECK(verify(store).holds());
}

TEST_CASE("a difference that the ledger would not take stops the closing") {
    auto store = with_october();
    auto close = closing(month(2026, 10));
    close.differences = {paper_issue("P5", day(2026, 11, 1), 5)};
    CHECK(refusal_of(store, close) ==
          Lines{"a ledger in memory: paper P5: a difference is dated in the month that it closes"});
    close.differences = {paper_issue("P1", day(2026, 10, 2), 2000, 1300)};
    CHECK(refusal_of(store, close) ==
          Lines{"a ledger in memory: paper P1: was posted before; give the difference a ref of its own"});
    CHECK(head(store)->entry == 2);
    CHECK_FALSE(last_seal(store));
}

TEST_CASE("a month without entries can be closed, and closes those before it") {
    auto store = Store::in_memory();
    const auto seal = close_month(store, closing(month(2026, 10)));
    CHECK(seal.entry == 1);
    CHECK(is_closed(store, month(2026, 1)));
    CHECK(verify(store).holds());
}

TEST_CASE("closing seals the quotes and orders that were saved until then") {
    auto store = with_october();
    static_cast<void>(
        save_quotes(store, std::vector<QuoteDraft>{{"R-1001", {{"request.yaml", "request: R-1001\n"}}}}, "mara"));
    take_order(store, {"500123", "Q000001", 1000, {}}, "mara");
    static_cast<void>(close_month(store, closing(month(2026, 10))));
    const auto content = parse_sealed(find_entry(store, 5)->draft.content);
    REQUIRE(content);
    CHECK(content->quotes != Hash{});
    CHECK(content->orders != Hash{});
    static_cast<void>(save_quotes(store, std::vector<QuoteDraft>{{"R-1002", {}}}, "mara"));
    CHECK(verify(store).holds());
}
