// A clock that was set back: entries keep both times, covered by their hash.
#include "ledger/store/clock.hpp"

#include <catch2/catch.hpp>

#include "ledger/proof/verify.hpp"
#include "ledger/reading/entries.hpp"
#include "ledger/writing/posting.hpp"
#include "ledger/writing/reversal.hpp"
#include "tests/unit/ledger/ledger_file.hpp"
#include "tests/unit/ledger/made_drafts.hpp"

using namespace flutebook;
using namespace flutebook::ledger;
using namespace flutebook::fixture;

TEST_CASE("an entry keeps both times where the clock went back behind the newest one, and its store tells it once") {
    const LedgerFolder folder;
    SetClock clock(2'000'000);
    const auto post_one = [&](Store& store, const std::string& ref) {
        static_cast<void>(post(store, std::vector{paper_issue(ref, day(2026, 10, 2), 1)}, "mara"));
    };
    auto store = Store::open_for_writing(folder.file(), IfMissing::create, clock);
    post_one(store, "P1");
    CHECK_FALSE(store.clock_lag());
    clock.set(1'000'000);
    post_one(store, "P2");
    clock.set(1'500'000);
    static_cast<void>(reverse(store, {1, day(2026, 10, 3), "typed twice", "jonas"}));
    const auto entry = [&](std::int64_t number) { return find_entry(store, number).value(); };
    for (const std::int64_t number : {2, 3}) CHECK(entry(number).when == entry(1).when);
    CHECK(entry(2).clock->time_since_epoch().count() == 1'000'000);
    CHECK(entry(3).clock == clock.now());
    // The first time; not each.
    REQUIRE(store.clock_lag());
    CHECK(store.clock_lag()->clock.time_since_epoch().count() == 1'000'000);
    CHECK(store.clock_lag()->newest == entry(1).when);
    clock.set(2'000'001);
    post_one(store, "P3");
    CHECK_FALSE(entry(4).clock);
    CHECK(run_behind(folder.file(), "SELECT written || ', ' || clock FROM entries WHERE entry = 2") ==
          std::vector<std::string>{"1970-01-24 03:33:20, 1970-01-12 13:46:40"});
    CHECK(verify(store).holds());
}

TEST_CASE("the time of a clock that went back cannot be changed, taken away or added unseen") {
    SetClock clock(2'000'000);
    for (const auto* change :
         {"UPDATE entry SET clock = clock + 1 WHERE id = 2", "UPDATE entry SET clock = NULL WHERE id = 2",
          "UPDATE entry SET clock = 5 WHERE id = 1"}) {
        CAPTURE(change);
        const LedgerFolder folder;
        clock.set(2'000'000);
        {
            auto store = Store::open_for_writing(folder.file(), IfMissing::create, clock);
            static_cast<void>(post(store, std::vector{paper_issue("P1", day(2026, 10, 2), 1)}, "mara"));
            clock.set(1'000'000);
            static_cast<void>(post(store, std::vector{paper_issue("P2", day(2026, 10, 2), 1)}, "mara"));
        }
        CHECK(verify(Store::open_for_reading(folder.file())).holds());
        forge(folder.file(), change);
        CHECK_FALSE(verify(Store::open_for_reading(folder.file())).holds());
    }
}
