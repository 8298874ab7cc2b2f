// Killed at instants drawn by lot, in whatever it does, a ledger stays whole: nothing that was acknowledged is lost,
// no document is there by half, and doing the same again ends where an unharmed run ends.
#include <catch2/catch.hpp>

#include <chrono>
#include <filesystem>
#include <functional>
#include <random>
#include <thread>

#include "ledger/proof/backup.hpp"
#include "ledger/proof/verify.hpp"
#include "ledger/reading/entries.hpp"
#include "ledger/reading/records.hpp"
#include "ledger/writing/close.hpp"
#include "ledger/writing/posting.hpp"
#include "tests/faults/deeds.hpp"
#include "tests/faults/running_victim.hpp"
#include "tests/unit/ledger/ledger_file.hpp"
#include "tests/unit/ledger/made_drafts.hpp"

using namespace flutebook;
using namespace flutebook::ledger;
using namespace flutebook::fixture;

namespace {

namespace fs = std::filesystem;
using std::chrono::microseconds;

constexpr std::uint64_t stream_seed = 20261;
constexpr std::size_t documents = 400, group = 20;

void expect_whole(const std::string& file) {
    const auto proof = verify(Store::open_for_reading(file));
    for (const auto& finding : proof.findings) UNSCOPED_INFO(finding.text);
    REQUIRE(proof.holds());
}

// Killed early enough, it is not there yet, or has no tables yet.
bool holds_a_ledger(const std::string& file) {
    return fs::exists(file) && run_behind(file, "SELECT count(*) FROM sqlite_schema").at(0) != "0";
}

// Kills the victim again and again, each time at another instant between its beginning and its end.
class Lot {
public:
    // `words` of an unharmed run, in a place made by `prepare`, tell how long it takes.
    Lot(std::uint64_t seed, const std::function<std::vector<std::string>()>& prepare) : random_(seed) {
        RunningVictim unharmed(prepare());
        unharmed.wait_for_lines(1);
        const auto begun = std::chrono::steady_clock::now();
        const auto end = unharmed.end();
        REQUIRE(end.exit_code == 0);
        takes_ = std::chrono::duration_cast<microseconds>(std::chrono::steady_clock::now() - begun);
    }

    VictimEnd kill(const std::vector<std::string>& words) {
        RunningVictim victim(words);
        victim.wait_for_lines(1);
        const auto span = static_cast<std::uint64_t>(takes_.count());
        std::this_thread::sleep_for(microseconds(random_() % (span + 1)));
        victim.kill_now();
        const auto end = victim.end();
        // A machine that is busy with other things takes longer or shorter than it just did: follow it.
        takes_ = end.signal != 0 ? takes_ * 21 / 20 : std::max(takes_ * 4 / 5, microseconds(500));
        if (end.signal != 0) ++killed_;
        return end;
    }

    // The lot is worth something only where many were hit before their end.
    void expect_hits(int of) const {
        INFO(killed_ << " of " << of << " were killed before they had ended, within " << takes_.count() << " us");
        CHECK(killed_ >= of / 3);
    }

private:
    std::mt19937_64 random_;
    microseconds takes_{};
    int killed_ = 0;
};

}  // namespace

TEST_CASE("killed at 120 instants of posting, a ledger keeps what it acknowledged, and no half of a group") {
    const LedgerFolder folder;
    const std::vector<std::string> post_words = {"post", folder.file(), std::to_string(stream_seed),
                                                 std::to_string(documents), std::to_string(group)};
    const auto clear = [&] {
        for (const auto* end : {"", "-wal", "-shm", ".lock"}) fs::remove(folder.file() + end);
    };
    Lot lot(1, [&] { return post_words; });
    const auto unharmed = contents(folder.file());
    for (int instant = 0; instant < 120; ++instant) {
        INFO("instant " << instant);
        clear();
        auto acknowledged = lot.kill(post_words).done;
        // Some are killed again while they make up for it.
        if (instant % 4 == 0) acknowledged = std::max(acknowledged, lot.kill(post_words).done);
        if (acknowledged > 0 || holds_a_ledger(folder.file())) {
            expect_whole(folder.file());
            const auto newest = head(Store::open_for_reading(folder.file()));
            const auto entries = newest ? static_cast<std::size_t>(newest->entry) : 0;
            CHECK(entries % group == 0);
            CHECK(entries >= static_cast<std::size_t>(acknowledged) * group);
        }
        REQUIRE(run_victim(post_words).exit_code == 0);
        expect_whole(folder.file());
        CHECK(contents(folder.file()) == unharmed);
    }
    lot.expect_hits(150);
}

TEST_CASE("killed at 25 instants of closing, a month is closed whole or not at all") {
    const LedgerFolder folder;
    const auto open_month = folder.file("open.db");
    make_ledger(open_month, stream_seed, 2000);
    const auto renew = [&] {
        for (const auto* end : {"", "-wal", "-shm", ".lock"}) fs::remove(folder.file() + end);
        fs::copy_file(open_month, folder.file());
        return std::vector<std::string>{"close", folder.file()};
    };
    Lot lot(2, renew);
    const auto unharmed = contents(folder.file());
    for (int instant = 0; instant < 25; ++instant) {
        INFO("instant " << instant);
        const auto end = lot.kill(renew());
        expect_whole(folder.file());
        auto store = Store::open_for_writing(folder.file(), IfMissing::refuse, still_clock());
        const bool is_sealed = seal_of(store, month(2026, 9)).has_value();
        CHECK(head(store)->entry == (is_sealed ? 2003 : 2000));
        if (end.done > 0) CHECK(is_sealed);
        if (!is_sealed) close_september(store);
        CHECK(contents(folder.file()) == unharmed);
    }
    lot.expect_hits(25);
}

TEST_CASE("killed at 40 instants of saving and marking quotes, each quote has its whole record or none") {
    const LedgerFolder folder;
    const auto without = folder.file("without.db"), unmarked = folder.file("unmarked.db");
    make_ledger(without, stream_seed, 0);
    fs::copy_file(without, unmarked);
    {
        auto store = Store::open_for_writing(unmarked, IfMissing::refuse, still_clock());
        save_quotes_and_order(store);
    }
    for (const std::string verb : {"quote", "mark"}) {
        const auto renew = [&] {
            for (const auto* end : {"", "-wal", "-shm", ".lock"}) fs::remove(folder.file() + end);
            fs::copy_file(verb == "quote" ? without : unmarked, folder.file());
            return std::vector<std::string>{verb, folder.file()};
        };
        Lot lot(5, renew);
        const auto unharmed = contents(folder.file());
        for (int instant = 0; instant < 20; ++instant) {
            INFO(verb << ", instant " << instant);
            const auto end = lot.kill(renew());
            expect_whole(folder.file());
            auto store = Store::open_for_writing(folder.file(), IfMissing::refuse, still_clock());
            const auto quotes = quote_numbers(store).size();
            CHECK((quotes == 0 || quotes == 3));
            CHECK(quotes_without(store, found_by_kind).empty());
            if (end.done > 0) CHECK(quotes == 3);
            if (verb == "quote") save_quotes_and_order(store);
            if (verb == "mark") mark_quotes(store);
            CHECK(contents(folder.file()) == unharmed);
        }
        lot.expect_hits(20);
    }
}

TEST_CASE("killed at 30 instants of a backup, there is a whole copy or none, and the ledger does not mind") {
    const LedgerFolder folder;
    make_ledger(folder.file(), stream_seed, 2000);
    const auto original = contents(folder.file());
    const auto copy = folder.file("copy.db");
    const auto renew = [&] {
        fs::remove(copy);
        return std::vector<std::string>{"backup", folder.file(), copy};
    };
    Lot lot(3, renew);
    for (int instant = 0; instant < 30; ++instant) {
        INFO("instant " << instant);
        const auto end = lot.kill(renew());
        if (end.done > 0) CHECK(fs::exists(copy));
        if (!fs::exists(copy)) static_cast<void>(backup(Store::open_for_reading(folder.file()), copy));
        expect_whole(copy);
        CHECK(contents(copy) == original);
        expect_whole(folder.file());
    }
    CHECK(contents(folder.file()) == original);
    lot.expect_hits(30);
}

TEST_CASE("killed at 25 instants of being brought up to date, a ledger is of one version or the other") {
    const LedgerFolder folder;
    const auto old = folder.file("old.db");
    make_old_ledger(old, stream_seed, 300);
    const auto renew = [&] {
        for (const auto* end : {"", "-wal", "-shm", ".lock"}) fs::remove(folder.file() + end);
        fs::copy_file(old, folder.file());
        return std::vector<std::string>{"open", folder.file()};
    };
    Lot lot(4, renew);
    const auto unharmed = contents(folder.file());
    for (int instant = 0; instant < 25; ++instant) {
        INFO("instant " << instant);
        static_cast<void>(lot.kill(renew()));
        const auto version = run_behind(folder.file(), "PRAGMA user_version").at(0);
        const bool is_old_or_new =
            version == "1" || version == "2" || version == "3" || version == "4" || version == "5";
        CHECK(is_old_or_new);
        expect_whole(folder.file());
        CHECK(contents(folder.file()) == unharmed);
    }
    lot.expect_hits(25);
}
