// A write that was broken off before there was a log: the first one after an old backup was restored, or an upgrade.
// The journal that it leaves is undone by whoever opens the ledger next, or told where that one may not.
#include <sys/stat.h>
#include <unistd.h>

#include <catch2/catch.hpp>
#include <chrono>
#include <filesystem>
#include <thread>

#include "ledger/proof/backup.hpp"
#include "ledger/proof/verify.hpp"
#include "ledger/reading/entries.hpp"
#include "tests/faults/deeds.hpp"
#include "tests/faults/running_victim.hpp"
#include "tests/faults/shell.hpp"
#include "tests/unit/ledger/ledger_file.hpp"

using namespace flutebook;
using namespace flutebook::ledger;
using namespace flutebook::fixture;

namespace {

namespace fs = std::filesystem;

void remove_ledger(const std::string& file) {
    for (const auto* end : {"", "-wal", "-shm", "-journal", ".lock"}) fs::remove(file + end);
}

// A ledger as releases before kept their backups: without a log.
void make_old_backup(const std::string& file) {
    make_ledger(file, 1, 200);
    CHECK(run_shell(file, "PRAGMA journal_mode = DELETE").exit_code == 0);
    for (const auto* end : {"-wal", "-shm", ".lock"}) fs::remove(file + end);
}

// The files as a process that is killed in the middle of a large change leaves them.
void break_off_write(const std::string& file, const std::string& broken) {
    const auto answer = run_shell(
        file, "PRAGMA cache_size = 1", "PRAGMA cache_spill = 1", "BEGIN IMMEDIATE",
        "WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 20000) INSERT INTO name (text) "
        "SELECT 'name ' || i FROM n",
        ".shell cp " + file + " " + broken, ".shell cp " + file + "-journal " + broken + "-journal", "ROLLBACK");
    REQUIRE(answer.errors.empty());
    REQUIRE(fs::file_size(broken + "-journal") > 0);
}

}  // namespace

TEST_CASE("an interrupted write is undone by the first person who reads the ledger") {
    const LedgerFolder folder;
    make_old_backup(folder.file("old.db"));
    break_off_write(folder.file("old.db"), folder.file());
    const auto proof = verify(Store::open_for_reading(folder.file()));
    CHECK(proof.holds());
    CHECK(proof.entries == 200);
    CHECK_FALSE(fs::exists(folder.file() + "-journal"));
    CHECK(contents(folder.file()) == contents(folder.file("old.db")));
}

TEST_CASE("a user who may not write gets a message that a write was interrupted, and how to undo it") {
    if (geteuid() != 0) {
        WARN("not root: no process can be run as another user");
        return;
    }
    const LedgerFolder folder;
    make_old_backup(folder.file("old.db"));
    break_off_write(folder.file("old.db"), folder.file());
    REQUIRE(chmod(folder.path().c_str(), 0755) == 0);
    const auto refused = run_victim({"as", "4002", "4002", "022", "read", folder.file()});
    CHECK(refused.exit_code == 3);
    CHECK(refused.errors == folder.file() + ": a write to it was interrupted, and " + folder.file() +
                                "-journal holds what must be undone before it can be read; run `flutebook verify` as a "
                                "user who may write to both\n");
    CHECK(run_victim({"read", folder.file()}).exit_code == 0);
    CHECK(run_victim({"as", "4002", "4002", "022", "read", folder.file()}).exit_code == 0);
}

TEST_CASE("a backup has a log from its first write on: no journal is left by a kill") {
    const LedgerFolder folder;
    make_ledger(folder.file(), 1, 200);
    static_cast<void>(backup(Store::open_for_reading(folder.file()), folder.file("copy.db")));
    CHECK(run_behind(folder.file("copy.db"), "PRAGMA journal_mode") == std::vector<std::string>{"wal"});
}

TEST_CASE("killed at 40 instants of the first write after an old backup was restored, a ledger can be read") {
    const LedgerFolder folder;
    const auto old = folder.file("old.db");
    make_old_backup(old);
    int killed = 0;
    for (int instant = 0; instant < 40; ++instant) {
        INFO("instant " << instant);
        remove_ledger(folder.file());
        fs::copy_file(old, folder.file());
        RunningVictim victim({"post", folder.file(), "7", "20", "20"});
        victim.wait_for_lines(1);
        std::this_thread::sleep_for(std::chrono::microseconds(instant * 150));
        victim.kill_now();
        if (victim.end().signal != 0) ++killed;
        const auto proof = verify(Store::open_for_reading(folder.file()));
        CHECK(proof.holds());
        const bool is_whole = proof.entries == 200 || proof.entries == 220;
        CHECK(is_whole);
    }
    CHECK(killed >= 10);
}
