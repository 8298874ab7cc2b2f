// Two users at one ledger, with real user numbers: neither locks the other out.
#include <sys/stat.h>
#include <unistd.h>

#include <catch2/catch.hpp>
#include <filesystem>

#include "ledger/proof/verify.hpp"
#include "ledger/reading/entries.hpp"
#include "tests/faults/deeds.hpp"
#include "tests/faults/running_victim.hpp"
#include "tests/unit/ledger/ledger_file.hpp"

using namespace flutebook;
using namespace flutebook::ledger;
using namespace flutebook::fixture;

namespace {

namespace fs = std::filesystem;

constexpr const char *mara = "4001", *ivo = "4002", *plant_group = "4100", *shared_umask = "002", *usual_umask = "022";

// A folder with these rights that belongs to the plant's group.
class SharedFolder : public LedgerFolder {
public:
    explicit SharedFolder(mode_t mode) {
        REQUIRE(chown(path().c_str(), 0, 4100) == 0);
        REQUIRE(chmod(path().c_str(), mode) == 0);
    }
};

struct UserAct {
    const char *user, *mask;
    std::vector<std::string> words;
};

std::vector<std::string> victim_words(const UserAct& act) {
    std::vector<std::string> all = {"as", act.user, plant_group, act.mask};
    all.insert(all.end(), act.words.begin(), act.words.end());
    return all;
}

void expect_done(const UserAct& act) {
    const auto end = run_victim(victim_words(act));
    INFO(act.user << " " << act.words[0] << ": " << end.errors);
    CHECK(end.exit_code == 0);
}

struct stat facts_about(const std::string& file) {
    struct stat facts {};
    REQUIRE(stat(file.c_str(), &facts) == 0);
    return facts;
}

bool may_change_user() {
    if (geteuid() == 0) return true;
    WARN("not root: no process can be run as another user");
    return false;
}

}  // namespace

TEST_CASE("a reader of another user locks the ledger's owner out of nothing") {
    if (!may_change_user()) return;
    const SharedFolder folder(0777);
    expect_done({mara, usual_umask, {"post", folder.file(), "1", "20", "10"}});
    expect_done({ivo, usual_umask, {"read", folder.file()}});
    expect_done({mara, usual_umask, {"post", folder.file(), "1", "40", "10"}});
    // As after a restore, and as older releases left it: no log is there, and the reader may make none.
    fs::remove(folder.file() + "-wal");
    fs::remove(folder.file() + "-shm");
    expect_done({ivo, usual_umask, {"read", folder.file()}});
    CHECK_FALSE(fs::exists(folder.file() + "-wal"));
    CHECK_FALSE(fs::exists(folder.file() + "-shm"));
    expect_done({mara, usual_umask, {"post", folder.file(), "1", "60", "10"}});
    CHECK(verify(Store::open_for_reading(folder.file())).holds());
}

TEST_CASE("a user who may only read sees what is posted while its owner holds the ledger") {
    if (!may_change_user()) return;
    const SharedFolder folder(0755);
    REQUIRE(chown(folder.path().c_str(), 4001, 4100) == 0);
    expect_done({mara, usual_umask, {"post", folder.file(), "1", "20", "10"}});
    RunningVictim holder(victim_words({mara, usual_umask, {"hold", folder.file()}}));
    holder.wait_for_lines(2);
    expect_done({ivo, usual_umask, {"read", folder.file()}});
    holder.kill_now();
    CHECK(holder.end().signal == 9);
    expect_done({ivo, usual_umask, {"read", folder.file()}});
    expect_done({mara, usual_umask, {"post", folder.file(), "1", "40", "10"}});
}

TEST_CASE("in a folder of a group, with a umask that shares, a new ledger is the group's to write") {
    if (!may_change_user()) return;
    const SharedFolder folder(02770);
    expect_done({mara, shared_umask, {"post", folder.file(), "1", "20", "10"}});
    for (const auto* end : {"", "-wal", "-shm", ".lock"}) {
        INFO(end);
        CHECK((facts_about(folder.file() + end).st_mode & 0777) == 0664);
        CHECK(facts_about(folder.file() + end).st_gid == 4100);
    }
    expect_done({ivo, shared_umask, {"post", folder.file(), "1", "40", "10"}});
    expect_done({mara, shared_umask, {"post", folder.file(), "1", "60", "10"}});
    CHECK(verify(Store::open_for_reading(folder.file())).entries == 60);
}

TEST_CASE("whoever of a group opens a restored ledger first leaves it to the others, whatever the folder and umask") {
    if (!may_change_user()) return;
    const SharedFolder folder(0777);
    expect_done({mara, shared_umask, {"post", folder.file(), "1", "20", "10"}});
    REQUIRE(chown(folder.file().c_str(), 4001, 4100) == 0);
    for (const auto* verb : {"read", "open"}) {
        INFO(verb);
        for (const auto* end : {"-wal", "-shm", ".lock"}) fs::remove(folder.file() + end);
        expect_done({ivo, usual_umask, {verb, folder.file()}});
        for (const auto* user : {mara, ivo}) expect_done({user, usual_umask, {"open", folder.file()}});
    }
    CHECK(verify(Store::open_for_reading(folder.file())).holds());
}

TEST_CASE("a log that another user left, and that cannot be written, is named with its user") {
    if (!may_change_user()) return;
    const SharedFolder folder(0777);
    expect_done({mara, usual_umask, {"post", folder.file(), "1", "20", "10"}});
    REQUIRE(chown((folder.file() + "-shm").c_str(), 4002, 4002) == 0);
    REQUIRE(chmod((folder.file() + "-shm").c_str(), 0644) == 0);
    const auto refused = run_victim(victim_words({mara, usual_umask, {"open", folder.file()}}));
    CHECK(refused.exit_code == 3);
    CHECK(refused.errors.find(folder.file() + "-shm belongs to user 4002 and may not be changed") != std::string::npos);
}
