// A ledger's file: made, opened, guarded, brought up to date, refused.
#include "ledger/store/store.hpp"

#include <fcntl.h>
#include <sys/wait.h>
#include <unistd.h>

#include <catch2/catch.hpp>

#include <fstream>

#include "ledger/proof/verify.hpp"
#include "ledger/reading/entries.hpp"
#include "ledger/reading/quotes.hpp"
#include "ledger/store/connection.hpp"
#include "ledger/store/migrations.hpp"
#include "ledger/writing/posting.hpp"
#include "tests/unit/ledger/ledger_file.hpp"
#include "tests/unit/ledger/made_drafts.hpp"

using namespace flutebook;
using namespace flutebook::ledger;
using namespace flutebook::fixture;

namespace {

struct Refusal {
    std::string text;
    LedgerError::Kind kind;
};

template <typename Act>
Refusal refusal_of(const Act& act) {
    try {
        static_cast<void>(act());
    } catch (const LedgerError& error) {
        return {error.what(), error.kind()};
    }
    return {"", LedgerError::Kind::refused};
}

// What a store's own connection says to a statement: nothing where it takes it.
std::string answer_to(const Store& store, const char* sql) {
    try {
        store.connection().books().run(sql);
    } catch (const LedgerError& error) {
        return error.what();
    }
    return "";
}

void post_some(const std::string& file) {
    auto store = Store::open_for_writing(file, IfMissing::create);
    static_cast<void>(post(store, DocumentStream(5).take(30), "mara"));
}

}  // namespace

TEST_CASE("a ledger that is not there is made only where that was asked") {
    const LedgerFolder folder;
    const auto file = folder.file();
    const auto reading = refusal_of([&] { return Store::open_for_reading(file); });
    CHECK(reading.text == file + ": there is no such ledger: nothing was saved or posted yet; post something first");
    CHECK(reading.kind == LedgerError::Kind::refused);
    CHECK(refusal_of([&] { return Store::open_for_writing(file, IfMissing::refuse); }).text == reading.text);
    CHECK(std::filesystem::is_empty(folder.path()));
    post_some(file);
    CHECK(head(Store::open_for_reading(file))->entry == 30);
    CHECK(head(Store::open_for_writing(file, IfMissing::refuse))->entry == 30);
}

TEST_CASE("an empty file is no ledger yet, and becomes one") {
    const LedgerFolder folder;
    std::ofstream(folder.file()).close();
    const auto expected = folder.file() + ": holds no ledger yet: nothing was saved or posted; post something first";
    CHECK(refusal_of([&] { return Store::open_for_reading(folder.file()); }).text == expected);
    CHECK(refusal_of([&] { return Store::open_for_writing(folder.file(), IfMissing::refuse); }).text == expected);
    CHECK_NOTHROW(post_some(folder.file()));
}

TEST_CASE("what is no ledger is refused and left as it was") {
    const LedgerFolder folder;
    const auto other = folder.file("other.db");
    std::ofstream(other).close();
    run_behind(other, "CREATE TABLE stock(a); INSERT INTO stock VALUES (1)");
    const auto refusal = refusal_of([&] { return Store::open_for_writing(other, IfMissing::create); });
    CHECK(refusal.text == other + ": is not a ledger: a database of another program; name another file");
    CHECK(refusal.kind == LedgerError::Kind::unfit);
    CHECK(refusal_of([&] { return Store::open_for_reading(other); }).text == refusal.text);
    CHECK(run_behind(other, "PRAGMA journal_mode") == std::vector<std::string>{"delete"});

    const auto text = folder.file("papers.yaml");
    std::ofstream(text)
        << "papers: {}\n# no database, and longer than the header of one would be, so that it is read\n";
    CHECK(refusal_of([&] { return Store::open_for_reading(text); }).kind == LedgerError::Kind::unfit);
    CHECK(refusal_of([&] { return Store::open_for_reading(folder.path().string()); }).text ==
          folder.path().string() + ": is not a ledger: no plain file; name another");
}

TEST_CASE("a ledger of a newer version is refused") {
    const LedgerFolder folder;
    post_some(folder.file());
    run_behind(folder.file(), "PRAGMA user_version = 6");
    const auto refusal = refusal_of([&] { return Store::open_for_reading(folder.file()); });
    CHECK(refusal.text == folder.file() +
                              ": was written by a newer version of the program: found tables of version 6, "
                              "this one knows 5; use the newer program");
    CHECK(refusal.kind == LedgerError::Kind::unfit);
    CHECK(refusal_of([&] { return Store::open_for_writing(folder.file(), IfMissing::create); }).text == refusal.text);
}

TEST_CASE("a ledger of an older version is brought up to date, also by who only reads it") {
    const LedgerFolder folder;
    {
        Database old(folder.file(), Database::Access::writing);
        old.set_guards();
        migrate(old, migrations().first(1));
        CHECK(old.number("PRAGMA user_version") == 1);
    }
    const auto store = Store::open_for_reading(folder.file());
    CHECK(run_behind(folder.file(), "PRAGMA user_version") == std::vector<std::string>{"5"});
    CHECK(quote_numbers(store).empty());
    CHECK(verify(store).holds());
}

TEST_CASE("one store at a time writes, and the other gets a message that names the writer") {
    const LedgerFolder folder;
    auto store = Store::open_for_writing(folder.file(), IfMissing::create);
    const auto refusal = refusal_of([&] { return Store::open_for_writing(folder.file(), IfMissing::create); });
    CHECK(refusal.text == folder.file() + ": somebody else is writing to it: process " + std::to_string(getpid()) +
                              " holds " + folder.file() +
                              ".lock; one process writes at a time, try again when it has "
                              "ended");
    CHECK(refusal.kind == LedgerError::Kind::refused);
    CHECK_NOTHROW(Store::open_for_reading(folder.file()));
    {
        const Store moved = std::move(store);
        CHECK(refusal_of([&] { return Store::open_for_writing(folder.file(), IfMissing::create); }).text ==
              refusal.text);
    }
    CHECK_NOTHROW(Store::open_for_writing(folder.file(), IfMissing::create));
}

TEST_CASE("the writer's own connection cannot change or delete what was posted, nor loosen its guards") {
    const LedgerFolder folder;
    post_some(folder.file());
    const auto store = Store::open_for_writing(folder.file(), IfMissing::refuse);
    const auto head_before = head(store)->hash;
    for (const auto* sql : {"UPDATE entry SET note = 'x' WHERE id = 3",
                            "DELETE FROM entry WHERE id = 3",
                            "DELETE FROM movement",
                            "UPDATE movement SET grams = 1",
                            "UPDATE name SET text = 'x' WHERE id = 1",
                            "DELETE FROM seal",
                            "DELETE FROM month_flow",
                            "UPDATE quote SET request = 'x'",
                            "DELETE FROM content",
                            "DROP TRIGGER entry_is_kept",
                            "DROP TABLE entry",
                            "ALTER TABLE entry ADD COLUMN x",
                            "CREATE TABLE x(a)",
                            "CREATE TEMP TRIGGER x AFTER INSERT ON entry BEGIN SELECT 1; END",
                            "ATTACH 'x' AS x",
                            "VACUUM",
                            "PRAGMA foreign_keys = OFF",
                            "PRAGMA recursive_triggers = OFF",
                            "PRAGMA writable_schema = ON",
                            "PRAGMA synchronous = OFF",
                            "PRAGMA journal_mode = OFF",
                            "PRAGMA user_version = 9",
                            "INSERT INTO sqlite_schema VALUES ('table', 'x', 'x', 0, 'x')"}) {
        INFO(sql);
        CHECK(answer_to(store, sql).find("a ledger does not allow this") != std::string::npos);
    }
    // Triggers hold what the connection would let pass.
    for (const auto* sql :
         {"INSERT OR REPLACE INTO entry SELECT id, kind, ref, 'x', day, shift, centre, order_, board, note, who, "
          "written, "
          "reverses, hash FROM entry WHERE id = 3",
          "SELECT load_extension('x')", "INSERT OR REPLACE INTO name VALUES (1, 'x')",
          "INSERT INTO name VALUES (1, 'x')",
          "INSERT OR REPLACE INTO movement SELECT id, from_account, to_account, material, cause, 1, money, day FROM "
          "movement WHERE id = 1000"}) {
        INFO(sql);
        CHECK_FALSE(answer_to(store, sql).empty());
    }
    CHECK(head(store)->hash == head_before);
    CHECK(verify(store).holds());
}

TEST_CASE("a reading connection writes nothing") {
    const LedgerFolder folder;
    post_some(folder.file());
    const auto store = Store::open_for_reading(folder.file());
    for (const auto* sql : {"INSERT INTO name (text) VALUES ('x')", "UPDATE month_flow SET grams = 1",
                            "PRAGMA query_only = OFF", "CREATE TABLE x(a)"}) {
        INFO(sql);
        CHECK_FALSE(answer_to(store, sql).empty());
    }
    CHECK(verify(store).holds());
}

TEST_CASE("a file whose triggers were taken away or changed is not written to") {
    const LedgerFolder folder;
    post_some(folder.file());
    run_behind(folder.file(), "DROP TRIGGER entry_is_kept");
    const auto gone = refusal_of([&] { return Store::open_for_writing(folder.file(), IfMissing::create); });
    CHECK(gone.text == folder.file() +
                           ": its tables were altered: trigger entry_is_kept is missing; restore a verified "
                           "backup");
    CHECK(gone.kind == LedgerError::Kind::unfit);
    run_behind(folder.file(), "CREATE TRIGGER entry_is_kept BEFORE UPDATE ON entry BEGIN SELECT 1; END");
    CHECK(refusal_of([&] { return Store::open_for_writing(folder.file(), IfMissing::create); }).text ==
          folder.file() + ": its tables were altered: trigger entry_is_kept was changed; restore a verified backup");
    const auto proof = verify(Store::open_for_reading(folder.file()));
    REQUIRE(proof.findings.size() == 1);
    CHECK(proof.findings[0].text == "the tables were altered: trigger entry_is_kept was changed");
}

TEST_CASE("a table that does not belong there is noticed") {
    const LedgerFolder folder;
    post_some(folder.file());
    run_behind(folder.file(), "CREATE TABLE private(a)");
    CHECK(verify(Store::open_for_reading(folder.file())).findings.at(0).text ==
          "the tables were altered: table private does not belong there");
}

TEST_CASE("a reader does not move the log into the file") {
    const LedgerFolder folder;
    auto store = Store::open_for_writing(folder.file(), IfMissing::create);
    static_cast<void>(post(store, DocumentStream(5).take(30), "mara"));
    const auto size = std::filesystem::file_size(folder.file());
    const auto log = std::filesystem::file_size(folder.file() + "-wal");
    CHECK(log > 0);
    { CHECK(head(Store::open_for_reading(folder.file()))->entry == 30); }
    CHECK(std::filesystem::file_size(folder.file()) == size);
    CHECK(std::filesystem::file_size(folder.file() + "-wal") == log);
}

TEST_CASE("an open ledger keeps the index of its log, so that no other process that opens the ledger truncates it") {
    const LedgerFolder folder;
    const auto is_held = [&] {
        const pid_t child = fork();
        if (child == 0) {
            // Where SQLite says in the index's file that a connection is open.
            struct flock lock {};
            lock.l_type = F_WRLCK;
            lock.l_whence = SEEK_SET;
            lock.l_start = 128;
            lock.l_len = 1;
            const int index = open((folder.file() + "-shm").c_str(), O_RDWR | O_CLOEXEC);
            _exit(index >= 0 && fcntl(index, F_GETLK, &lock) == 0 && lock.l_type != F_UNLCK ? 0 : 1);
        }
        int status = 1;
        waitpid(child, &status, 0);
        return WIFEXITED(status) && WEXITSTATUS(status) == 0;
    };
    {
        auto store = Store::open_for_writing(folder.file(), IfMissing::create);
        static_cast<void>(post(store, std::vector{paper_issue("P1", day(2026, 10, 2), 1)}, "mara"));
        CHECK(is_held());
        const auto reader = Store::open_for_reading(folder.file());
        CHECK(is_held());
    }
    auto store = Store::open_for_writing(folder.file(), IfMissing::refuse);
    CHECK(verify(store).holds());
    CHECK(is_held());
}
