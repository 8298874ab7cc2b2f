// A disk that fills up at every stage of every deed: the ledger says so in one sentence, stays as it was, can still be
// read, and takes the same again once there is room.
#include <catch2/catch.hpp>

#include <filesystem>
#include <functional>

#include "ledger/proof/verify.hpp"
#include "ledger/reading/entries.hpp"
#include "tests/faults/deeds.hpp"
#include "tests/faults/running_victim.hpp"
#include "tests/faults/small_disk.hpp"
#include "tests/unit/ledger/ledger_file.hpp"

using namespace flutebook;
using namespace flutebook::ledger;
using namespace flutebook::fixture;

namespace {

namespace fs = std::filesystem;

constexpr std::uint64_t stream_seed = 4711;
constexpr std::size_t room = std::size_t{256} << 20U;

std::vector<std::string> words_of(const std::string& verb, const std::string& file) {
    if (verb == "post") return {"post", file, std::to_string(stream_seed), "600", "600"};
    if (verb == "backup") return {"backup", file, file + ".copy"};
    return {verb, file};
}

// The state that the deed leaves behind when nothing goes wrong.
std::string unharmed(const std::string& verb, const std::string& before) {
    const LedgerFolder folder;
    if (!before.empty()) fs::copy_file(before, folder.file());
    REQUIRE(run_victim(words_of(verb, folder.file())).exit_code == 0);
    return contents(folder.file());
}

void expect_one_sentence(const VictimEnd& end, const std::string& saying = "no space is left on the disk") {
    INFO(end.errors);
    CHECK(end.signal == 0);
    CHECK(end.exit_code == 3);
    CHECK(std::count(end.errors.begin(), end.errors.end(), '\n') == 1);
    CHECK(end.errors.find(saying) != std::string::npos);
}

// With a little more room each time until the deed succeeds. Answers how often it did not.
int fill_up(const std::string& verb, const std::string& before) {
    const auto wanted = unharmed(verb, before);
    const auto old_head = before.empty() ? std::nullopt : head(Store::open_for_reading(before));
    const auto used = before.empty() ? std::size_t{0} : static_cast<std::size_t>(fs::file_size(before));
    int failed = 0;
    for (std::size_t free = 8192;; free += 40960) {
        INFO(verb << " with " << free << " bytes of room");
        REQUIRE(free < (std::size_t{8} << 20U));
        SmallDisk disk(used + free);
        if (!before.empty()) fs::copy_file(before, disk.file());
        const auto end = run_victim(words_of(verb, disk.file()));
        if (end.exit_code == 0) {
            disk.resize(room);
            CHECK(contents(disk.file()) == wanted);
            break;
        }
        ++failed;
        if (end.errors.find(".lock: No space") == std::string::npos) expect_one_sentence(end);
        CHECK(end.done == 0);
        if (old_head && free > 100000) {  // reading needs a page of its own beside the file
            const auto reader = Store::open_for_reading(disk.file());
            CHECK(head(reader)->hash == old_head->hash);
            CHECK(verify(reader).holds());
        }
        disk.resize(room);
        REQUIRE(run_victim(words_of(verb, disk.file())).exit_code == 0);
        CHECK(contents(disk.file()) == wanted);
        CHECK(verify(Store::open_for_reading(disk.file())).holds());
    }
    return failed;
}

}  // namespace

TEST_CASE("whatever it does, a ledger on a disk that fills up stays whole and goes on when there is room") {
    if (!SmallDisk::can_be_made()) {
        WARN("not root: no small disk can be mounted; the limit on file sizes stands in for it");
        return;
    }
    const LedgerFolder folder;
    make_ledger(folder.file(), 99, 300);
    CHECK(fill_up("post", "") > 5);
    CHECK(fill_up("post", folder.file()) > 3);
    CHECK(fill_up("close", folder.file()) > 0);
    // Without documents: those of a stream name orders that nobody took.
    make_ledger(folder.file("bare.db"), 99, 0);
    CHECK(fill_up("quote", folder.file("bare.db")) > 0);
    CHECK(fill_up("backup", folder.file()) > 2);
    CHECK(fill_up("open", "") > 2);
    const auto old = folder.file("old.db");
    make_old_ledger(old, 99, 300);
    CHECK(fill_up("open", old) > 0);
}

TEST_CASE("a file that may grow no further stops a posting as cleanly") {
    const LedgerFolder folder;
    make_ledger(folder.file(), 99, 300);
    const auto before = contents(folder.file());
    const auto size = fs::file_size(folder.file());
    int failed = 0;
    for (std::size_t limit = 20480; limit <= size + 400000; limit += 40960) {
        INFO("files of " << limit << " bytes");
        const LedgerFolder place;
        fs::copy_file(folder.file(), place.file());
        auto words = words_of("post", place.file());
        words.insert(words.begin(), {"limit", std::to_string(limit)});
        const auto end = run_victim(words);
        if (end.exit_code == 0) {
            CHECK(verify(Store::open_for_reading(place.file())).entries == 900);
            continue;
        }
        ++failed;
        expect_one_sentence(end, "nothing of the unfinished write was kept");
        CHECK(contents(place.file()) == before);
        REQUIRE(run_victim(words_of("post", place.file())).exit_code == 0);
        CHECK(verify(Store::open_for_reading(place.file())).entries == 900);
    }
    CHECK(failed > 3);
}
