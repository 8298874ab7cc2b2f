// Undoing an entry by its mirror.
#include "ledger/writing/reversal.hpp"

#include <catch2/catch.hpp>

#include "ledger/proof/verify.hpp"
#include "ledger/reading/entries.hpp"
#include "ledger/reading/month.hpp"
#include "ledger/writing/close.hpp"
#include "tests/unit/ledger/made_drafts.hpp"

using namespace flutebook;
using namespace flutebook::ledger;
using namespace flutebook::fixture;

namespace {

std::string refusal_of(Store& store, const Reversal& reversal) {
    try {
        static_cast<void>(reverse(store, reversal));
    } catch (const LedgerError& error) {
        CHECK(error.kind() == LedgerError::Kind::refused);
        return std::string(error.what()).substr(std::string("a ledger in memory: ").size());
    }
    return "";
}

}  // namespace

TEST_CASE("a reversal mirrors all that its entry stored") {
    auto store = Store::in_memory();
    const auto draft = corrugator_run("R1", day(2026, 10, 3), "500123");
    static_cast<void>(post(store, std::vector<Draft>{draft}, "mara"));
    CHECK(reverse(store, {1, day(2026, 11, 2), "wrong order", "jonas"}).number == 2);
    const auto mirror = find_entry(store, 2);
    REQUIRE(mirror);
    CHECK(mirror->reverses == 1);
    CHECK(find_entry(store, 1)->reversed_by == 2);
    CHECK(mirror->who == "jonas");
    CHECK(mirror->draft.kind == "reversal");
    CHECK(mirror->draft.ref == "1");
    CHECK(mirror->draft.note == "wrong order");
    CHECK(mirror->draft.shift == draft.shift);
    CHECK(mirror->draft.centre == draft.centre);
    CHECK(mirror->draft.order == draft.order);
    CHECK(mirror->draft.board == draft.board);
    REQUIRE(mirror->draft.movements.size() == draft.movements.size());
    for (std::size_t i = 0; i < draft.movements.size(); ++i) {
        CHECK(mirror->draft.movements[i].from == draft.movements[i].from);
        CHECK(mirror->draft.movements[i].mass == -draft.movements[i].mass);
        CHECK(mirror->draft.movements[i].money == -draft.movements[i].money);
    }
    CHECK(mirror->draft.expected[0].mass == -draft.expected[0].mass);
    CHECK(balances_before(store, month(2026, 12)).empty());
    CHECK(verify(store).holds());
}

TEST_CASE("the ref of a reversed entry stays taken") {
    auto store = Store::in_memory();
    const auto draft = paper_issue("P1", day(2026, 10, 3), 5);
    static_cast<void>(post(store, std::vector<Draft>{draft}, "mara"));
    static_cast<void>(reverse(store, {1, day(2026, 10, 3), "typed twice", "mara"}));
    CHECK(post(store, std::vector<Draft>{draft}, "mara").receipt.skipped == 1);
    CHECK(post(store, std::vector<Draft>{paper_issue("P1", day(2026, 10, 3), 6)}, "mara").is_refused());
}

TEST_CASE("an entry is reversed once, with a reason, in an open month, and a reversal never") {
    auto store = Store::in_memory();
    const std::vector<Draft> drafts = {paper_issue("P1", day(2026, 9, 3), 5), paper_issue("P2", day(2026, 10, 3), 5)};
    static_cast<void>(post(store, drafts, "mara"));
    CHECK(refusal_of(store, {9, day(2026, 10, 3), "typed twice", "mara"}) ==
          "there is no entry 9; see what was posted");
    CHECK(refusal_of(store, {2, day(2026, 10, 3), "", "mara"}) == "entry 2 is not reversed without a reason; say why");
    CHECK(refusal_of(store, {2, day(2026, 10, 3), " \n", "mara"}) ==
          "entry 2 is not reversed without a reason; say why");
    CHECK(refusal_of(store, {2, day(2026, 10, 2), "typed twice", "mara"}) ==
          "entry 2 is dated 2026-10-03; date the reversal on that day or later");
    static_cast<void>(reverse(store, {2, day(2026, 10, 3), "typed twice", "mara"}));
    CHECK(refusal_of(store, {2, day(2026, 10, 4), "typed twice", "mara"}) == "entry 2 was reversed before, by entry 3");
    CHECK(refusal_of(store, {3, day(2026, 10, 4), "typed twice", "mara"}) ==
          "entry 3 is a reversal itself; post the document again, under a new ref");
    static_cast<void>(close_month(store, {month(2026, 9), {}, {}, "", "mara"}));
    CHECK(refusal_of(store, {1, day(2026, 9, 30), "typed twice", "mara"}) ==
          "entry 1 cannot be reversed in 2026-09, which is closed; date the reversal in an open month");
    CHECK(refusal_of(store, {4, day(2026, 10, 30), "reopen", "mara"}) ==
          "entry 4 closes a month; a closed month stays closed");
    CHECK(head(store)->entry == 4);
    CHECK(reverse(store, {1, day(2026, 10, 30), "typed twice", "mara"}).number == 5);
    CHECK(verify(store).holds());
}
