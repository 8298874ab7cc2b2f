// Others at the ledger: a second writer, a database shell, a place that cannot be written to, a clock that jumps.
#include <sys/stat.h>
#include <unistd.h>
#include <catch2/catch.hpp>

#include <filesystem>

#include "ledger/proof/verify.hpp"
#include "ledger/reading/entries.hpp"
#include "ledger/writing/posting.hpp"
#include "tests/faults/deeds.hpp"
#include "tests/faults/running_victim.hpp"
#include "tests/faults/shell.hpp"
#include "tests/faults/small_disk.hpp"
#include "tests/unit/ledger/ledger_file.hpp"
#include "tests/unit/ledger/made_drafts.hpp"

using namespace flutebook;
using namespace flutebook::ledger;
using namespace flutebook::fixture;

namespace {

namespace fs = std::filesystem;

std::string first_line_after(const VictimEnd& end, const std::string& file) {
    return end.errors.substr(0, file.size()) == file ? end.errors.substr(file.size()) : end.errors;
}

std::string refusal_of_writing(const std::string& file) {
    try {
        static_cast<void>(Store::open_for_writing(file, IfMissing::create));
    } catch (const LedgerError& error) {
        CHECK(error.kind() == LedgerError::Kind::unfit);
        return error.what();
    }
    return "";
}

}  // namespace

TEST_CASE("a second process that wants to write is told which process writes, and may write when that one has ended") {
    const LedgerFolder folder;
    make_ledger(folder.file(), 1, 50);
    RunningVictim holder({"hold", folder.file()});
    holder.wait_for_lines(2);
    const auto refused = run_victim({"post", folder.file(), "2", "10", "10"});
    CHECK(refused.exit_code == 1);
    CHECK(first_line_after(refused, folder.file()) ==
          ": somebody else is writing to it: process " + std::to_string(holder.number()) + " holds " + folder.file() +
              ".lock; one process writes at a time, try again when it has ended\n");
    // Who reads does not wait.
    CHECK(verify(Store::open_for_reading(folder.file())).entries == 50);
    CHECK(run_victim({"backup", folder.file(), folder.file("copy.db")}).exit_code == 0);
    holder.kill_now();
    CHECK(holder.end().signal == 9);
    CHECK(run_victim({"post", folder.file(), "2", "10", "10"}).exit_code == 0);
}

TEST_CASE("of several processes that post at once each posts whole groups or is refused") {
    const LedgerFolder folder;
    make_ledger(folder.file(), 1, 0);
    int posted = 0;
    for (int round = 0; round < 5; ++round) {
        const auto words = [&](int seed) {
            return std::vector<std::string>{"post", folder.file(), std::to_string(seed), "40", "10"};
        };
        RunningVictim first(words(10)), second(words(10)), third(words(10));
        for (auto* victim : {&first, &second, &third}) {
            const auto end = victim->end();
            const bool ended_well = end.exit_code == 0 || end.exit_code == 1;
            CHECK(ended_well);
            if (end.exit_code == 0) ++posted;
            if (end.exit_code == 1) CHECK(end.errors.find("somebody else is writing to it") != std::string::npos);
        }
    }
    CHECK(posted > 0);
    const auto proof = verify(Store::open_for_reading(folder.file()));
    CHECK(proof.holds());
    CHECK(proof.entries == 40);
}

TEST_CASE("the database shell is refused every change of what was posted") {
    const LedgerFolder folder;
    make_ledger(folder.file(), 1, 50);
    const auto before = contents(folder.file());
    for (const auto* sql :
         {"UPDATE entry SET note = 'x' WHERE id = 7", "DELETE FROM entry WHERE id = 50",
          "UPDATE movement SET grams = grams - 1000 WHERE id = 7000", "DELETE FROM movement WHERE id = 7000",
          "UPDATE expected SET grams = 0", "DELETE FROM stock_count", "UPDATE stock_count SET grams = 0",
          "UPDATE name SET text = 'C9' WHERE text = 'C1'", "DELETE FROM month_flow",
          "INSERT INTO entry SELECT id, kind, 'new', content, day, shift, centre, order_, board, note, who, written, "
          "reverses, hash FROM entry WHERE id = 50",
          "INSERT OR REPLACE INTO entry SELECT id, kind, ref, 'new', day, shift, centre, order_, board, note, who, "
          "written, reverses, hash FROM entry WHERE id = 50",
          "INSERT INTO entry SELECT 51, kind, 'new', content, 20270230, shift, centre, order_, board, note, who, "
          "written - 1, reverses, hash FROM entry WHERE id = 50",
          "UPDATE entry SET day = 'soon'", "INSERT INTO movement VALUES (51000, 1, 1, 1, 1, 5, 0, 20261001)",
          "INSERT INTO movement VALUES (51000, 1, 2, 1, 1, 1.5, 0, 20261001)"}) {
        INFO(sql);
        const auto answer = run_shell(folder.file(), sql);
        CHECK(answer.exit_code != 0);
        CHECK_FALSE(answer.errors.empty());
        CHECK(contents(folder.file()) == before);
    }
}

TEST_CASE("what the database shell is not refused, the proof notices") {
    const LedgerFolder folder;
    make_ledger(folder.file(), 1, 50);
    const auto copy = folder.file("copy.db");
    for (const auto* sql :
         {"INSERT INTO movement SELECT 7900, from_account, to_account, material, cause, 5, 0, day FROM movement LIMIT "
          "1",
          "INSERT OR REPLACE INTO movement SELECT id, from_account, to_account, material, cause, grams + 5, money, day "
          "FROM movement WHERE id = 7000",
          "INSERT INTO expected VALUES (7900, 1, 5)", "UPDATE month_flow SET grams = grams + 1",
          "INSERT INTO month_flow VALUES (202610, 1, 2, 3, 4, 1, 5, 0)",
          "UPDATE month_expected SET grams = 0 WHERE grams > 0",
          "INSERT INTO seal SELECT month, id FROM entry WHERE id = 50",
          "DROP TRIGGER entry_is_kept; UPDATE entry SET note = 'x' WHERE id = 7",
          "DROP TRIGGER movement_stays; DELETE FROM movement WHERE id = 7000",
          "PRAGMA writable_schema = ON; DELETE FROM sqlite_schema WHERE type = 'trigger'", "CREATE TABLE extra(a)",
          "DROP VIEW movements", "INSERT INTO stock_count VALUES (7, 20260901, 1, 1, 5, NULL)"}) {
        INFO(sql);
        fs::copy_file(folder.file(), copy, fs::copy_options::overwrite_existing);
        CHECK(run_shell(copy, sql).errors.empty());
        CHECK_FALSE(verify(Store::open_for_reading(copy)).holds());
    }
}

TEST_CASE("a ledger on a read-only disk is read, and not written to") {
    if (!SmallDisk::can_be_made()) {
        WARN("not root: no disk can be mounted; the rights of the folder stand in for it");
        return;
    }
    SmallDisk disk(std::size_t{4} << 20U);
    make_ledger(disk.file(), 1, 50);
    disk.make_read_only();
    CHECK(verify(Store::open_for_reading(disk.file())).entries == 50);
    CHECK(refusal_of_writing(disk.file()) ==
          disk.file() + ": cannot be written: " + disk.file() +
              ".lock: Read-only file system; allow writing to the file and its folder");
    const LedgerFolder folder;
    CHECK(run_victim({"backup", disk.file(), folder.file()}).exit_code == 0);
    const auto refused = run_victim({"backup", folder.file(), disk.file("copy.db")});
    CHECK(refused.exit_code == 3);
    CHECK(refused.errors.find("cannot be") != std::string::npos);
}

TEST_CASE("a ledger in a folder without the right to write is read, and not written to") {
    if (geteuid() == 0) {
        SUCCEED("root may write everywhere: the read-only disk stands for it");
        return;
    }
    const LedgerFolder folder;
    make_ledger(folder.file(), 1, 50);
    fs::remove(folder.file() + ".lock");
    REQUIRE(chmod(folder.path().c_str(), 0555) == 0);
    CHECK(verify(Store::open_for_reading(folder.file())).entries == 50);
    CHECK_FALSE(refusal_of_writing(folder.file()).empty());
    REQUIRE(chmod(folder.path().c_str(), 0755) == 0);
    REQUIRE(chmod(folder.file().c_str(), 0444) == 0);
    CHECK(refusal_of_writing(folder.file()) ==
          folder.file() + ": cannot be written: the file is read-only; allow writing to it and its folder");
}

TEST_CASE("a clock that jumps back between two runs makes no entry older than the one before it") {
    const LedgerFolder folder;
    SetClock clock(1'792'000'000);
    {
        auto store = Store::open_for_writing(folder.file(), IfMissing::create, clock);
        static_cast<void>(post(store, DocumentStream(1).take(5), "mara"));
    }
    clock.set(1'600'000'000);
    auto store = Store::open_for_writing(folder.file(), IfMissing::create, clock);
    static_cast<void>(post(store, DocumentStream(2, 2, 100).take(5), "mara"));
    for (std::int64_t number = 2; number <= 10; ++number)
        CHECK(find_entry(store, number)->when >= find_entry(store, number - 1)->when);
    CHECK(verify(store).holds());
}
