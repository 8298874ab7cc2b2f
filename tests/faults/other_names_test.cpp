// Names that lead elsewhere: a second name for a ledger, a link in the place of its lock, files that lie where a copy
// would be written. Nothing of somebody else's is written to, and no entry is lost.
#include <sys/stat.h>
#include <unistd.h>

#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "ledger/proof/backup.hpp"
#include "ledger/proof/verify.hpp"
#include "ledger/reading/entries.hpp"
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

std::string bytes_in(const std::string& file) {
    std::ostringstream text;
    text << std::ifstream(file, std::ios::binary).rdbuf();
    return text.str();
}

void write_bytes(const std::string& file, const std::string& bytes) {
    std::ofstream(file, std::ios::binary) << bytes;
}

template <typename Act>
std::string refusal_text(const Act& act) {
    try {
        static_cast<void>(act());
    } catch (const LedgerError& error) {
        CHECK(error.kind() == LedgerError::Kind::refused);
        return error.what();
    }
    return "";
}

mode_t mode_of(const std::string& file) {
    struct stat facts {};
    REQUIRE(stat(file.c_str(), &facts) == 0);
    return facts.st_mode & 07777;
}

// While it lives, new files get these rights at most.
class Umask {
public:
    explicit Umask(mode_t mask) : before_(umask(mask)) {}
    Umask(const Umask&) = delete;
    Umask& operator=(const Umask&) = delete;
    ~Umask() { umask(before_); }

private:
    mode_t before_;
};

}  // namespace

TEST_CASE("a ledger with a second name is neither written to nor read under either") {
    const LedgerFolder folder;
    make_ledger(folder.file(), 1, 50);
    fs::create_hard_link(folder.file(), folder.file("other.db"));
    for (const auto& name : {folder.file(), folder.file("other.db")}) {
        const auto expected = name +
                              ": has more than one name: found 2 hard links, and each would have a log of its own; "
                              "remove the other names, or work on a copy";
        CHECK(refusal_text([&] { return Store::open_for_writing(name, IfMissing::create); }) == expected);
        CHECK(refusal_text([&] { return Store::open_for_reading(name); }) == expected);
    }
    fs::remove(folder.file("other.db"));
    CHECK(run_victim({"post", folder.file(), "2", "10", "10"}).exit_code == 0);
    CHECK(verify(Store::open_for_reading(folder.file())).entries == 60);
}

TEST_CASE("a ledger and a symbolic link to it have one lock and one log") {
    const LedgerFolder folder;
    make_ledger(folder.file(), 1, 50);
    fs::create_symlink("ledger.db", folder.file("link.db"));
    RunningVictim holder({"hold", folder.file()});
    holder.wait_for_lines(2);
    const auto refused = run_victim({"post", folder.file("link.db"), "2", "10", "10"});
    CHECK(refused.exit_code == 1);
    CHECK(refused.errors.find("somebody else is writing to it") != std::string::npos);
    holder.kill_now();
    CHECK(holder.end().signal == 9);
    CHECK(run_victim({"post", folder.file("link.db"), "2", "10", "10"}).exit_code == 0);
    CHECK_FALSE(fs::exists(folder.file("link.db-wal")));
    CHECK_FALSE(fs::exists(folder.file("link.db.lock")));
    CHECK(verify(Store::open_for_reading(folder.file())).entries == 60);
}

TEST_CASE("a file that has the name of a ledger's lock, and is none, is left as it was") {
    const LedgerFolder folder;
    const std::string text = "version = 3\n[[package]]\n";
    write_bytes(folder.file("Cargo.lock"), text);
    CHECK(refusal_text([&] { return Store::open_for_writing(folder.file("Cargo"), IfMissing::create); }) ==
          folder.file("Cargo") + ": cannot be locked: " + folder.file("Cargo.lock") +
              " is another file, not the lock of a ledger; give the ledger another name");
    CHECK(bytes_in(folder.file("Cargo.lock")) == text);
    CHECK_FALSE(fs::exists(folder.file("Cargo")));

    write_bytes(folder.file("papers.yaml"), text);
    fs::create_symlink("papers.yaml", folder.file() + ".lock");
    CHECK(refusal_text([&] { return Store::open_for_writing(folder.file(), IfMissing::create); }) ==
          folder.file() + ": cannot be locked: " + folder.file() + ".lock is a symbolic link; remove the link");
    fs::remove(folder.file() + ".lock");
    fs::create_hard_link(folder.file("papers.yaml"), folder.file() + ".lock");
    CHECK_FALSE(refusal_text([&] { return Store::open_for_writing(folder.file(), IfMissing::create); }).empty());
    fs::remove(folder.file() + ".lock");
    REQUIRE(mkfifo((folder.file() + ".lock").c_str(), 0666) == 0);
    CHECK_FALSE(refusal_text([&] { return Store::open_for_writing(folder.file(), IfMissing::create); }).empty());
    CHECK(bytes_in(folder.file("papers.yaml")) == text);
}

TEST_CASE("a backup writes through no link or FIFO that lies where it would be made") {
    const LedgerFolder folder;
    make_ledger(folder.file(), 1, 50);
    const auto copy = folder.file("copy.db"), part = copy + ".part-" + std::to_string(getpid());
    write_bytes(folder.file("papers.yaml"), "papers: {}\n");
    const auto store = Store::open_for_reading(folder.file());
    fs::create_symlink("papers.yaml", part);
    CHECK_THROWS_AS(backup(store, copy), LedgerError);
    CHECK(bytes_in(folder.file("papers.yaml")) == "papers: {}\n");
    CHECK(fs::is_symlink(part));
    fs::remove(part);
    REQUIRE(mkfifo(part.c_str(), 0666) == 0);
    CHECK_THROWS_AS(backup(store, copy), LedgerError);
    CHECK(fs::is_fifo(part));
    fs::remove(part);
    // A log of that name would be taken for the copy's.
    write_bytes(copy + "-wal", "entries of another ledger");
    CHECK_THROWS_AS(backup(store, copy), LedgerError);
    CHECK_FALSE(fs::exists(copy));
    fs::remove(copy + "-wal");
    CHECK(backup(store, copy).entries == 50);
}

TEST_CASE("nobody may read a backup who may not read the ledger") {
    const LedgerFolder folder;
    {
        const Umask mask(077);
        make_ledger(folder.file(), 1, 50);
    }
    CHECK(mode_of(folder.file()) == 0600);
    for (const auto* end : {"-wal", "-shm", ".lock"}) CHECK(mode_of(folder.file() + end) == 0600);
    const Umask mask(022);
    static_cast<void>(backup(Store::open_for_reading(folder.file()), folder.file("copy.db")));
    CHECK(mode_of(folder.file("copy.db")) == 0600);
    REQUIRE(chmod(folder.file().c_str(), 0640) == 0);
    static_cast<void>(backup(Store::open_for_reading(folder.file()), folder.file("second.db")));
    CHECK(mode_of(folder.file("second.db")) == 0640);
}

TEST_CASE("what a killed backup left is cleared away by the next one into that folder, which says so") {
    const LedgerFolder folder;
    make_ledger(folder.file(), 1, 2000);
    const auto store = Store::open_for_reading(folder.file());
    fs::copy_file(folder.file(), folder.file("copy.db.part-4711"));
    write_bytes(folder.file("copy.db.part-4711-wal"), "");
    write_bytes(folder.file("other.db.part-4712"), "");
    write_bytes(folder.file("mine.db.part-4713"), "no ledger");
    const auto proof = backup(store, folder.file("copy.db"));
    CHECK(proof.cleared ==
          std::vector<std::string>{folder.file("copy.db.part-4711"), folder.file("other.db.part-4712")});
    CHECK_FALSE(fs::exists(folder.file("copy.db.part-4711-wal")));
    CHECK(fs::exists(folder.file("mine.db.part-4713")));
    CHECK(backup(store, folder.file("third.db")).cleared.empty());
}
