// Copies of a ledger in use.
#include "ledger/proof/backup.hpp"

#include <catch2/catch.hpp>

#include <fstream>
#include <thread>

#include "ledger/reading/entries.hpp"
#include "ledger/writing/posting.hpp"
#include "tests/unit/ledger/ledger_file.hpp"
#include "tests/unit/ledger/made_drafts.hpp"

using namespace flutebook;
using namespace flutebook::ledger;
using namespace flutebook::fixture;

namespace {

std::size_t files_in(const LedgerFolder& folder) {
    return static_cast<std::size_t>(std::distance(std::filesystem::directory_iterator(folder.path()), {}));
}

}  // namespace

TEST_CASE("a backup is a ledger of its own, proven whole, with the same head") {
    const LedgerFolder folder, elsewhere;
    auto store = Store::open_for_writing(folder.file(), IfMissing::create);
    static_cast<void>(post(store, DocumentStream(5).take(300), "mara"));
    const auto proof = backup(Store::open_for_reading(folder.file()), elsewhere.file());
    CHECK(proof.holds());
    CHECK(proof.entries == 300);
    CHECK(proof.head == head(store)->hash);
    CHECK(files_in(elsewhere) == 1);
    {
        auto copy = Store::open_for_writing(elsewhere.file(), IfMissing::refuse);
        CHECK(post(copy, DocumentStream(5).take(300), "mara").receipt.skipped == 300);
        CHECK(post(copy, DocumentStream(6, 2, 900).take(3), "mara").receipt.posted == 3);
    }
    CHECK(head(store)->entry == 300);
}

TEST_CASE("a backup overwrites nothing") {
    const LedgerFolder folder;
    auto store = Store::open_for_writing(folder.file(), IfMissing::create);
    std::ofstream(folder.file("copy.db")) << "mine";
    try {
        backup(store, folder.file("copy.db"));
        FAIL("it was overwritten");
    } catch (const LedgerError& error) {
        CHECK(error.kind() == LedgerError::Kind::refused);
        CHECK(error.what() ==
              folder.file("copy.db") + ": exists already: a backup overwrites nothing; name another file");
    }
    CHECK(std::filesystem::file_size(folder.file("copy.db")) == 4);
    std::filesystem::create_symlink("nowhere", folder.file("link.db"));
    CHECK_THROWS_AS(backup(store, folder.file("link.db")), LedgerError);
    CHECK_THROWS_AS(backup(store, folder.file("no/such/folder.db")), LedgerError);
}

TEST_CASE("a backup of a ledger that does not verify is not kept") {
    const LedgerFolder folder, elsewhere;
    {
        auto store = Store::open_for_writing(folder.file(), IfMissing::create);
        static_cast<void>(post(store, DocumentStream(5).take(30), "mara"));
    }
    forge(folder.file(), "UPDATE movement SET grams = grams + 1 WHERE id = 9000");
    try {
        backup(Store::open_for_reading(folder.file()), elsewhere.file());
        FAIL("it was kept");
    } catch (const LedgerError& error) {
        CHECK(error.kind() == LedgerError::Kind::unfit);
        REQUIRE(error.lines().size() > 1);
        CHECK(error.lines()[1].find("entry 9: was changed") != std::string::npos);
    }
    CHECK(files_in(elsewhere) == 0);
}

TEST_CASE("while documents are posted, each backup is one moment of the ledger") {
    const LedgerFolder folder, elsewhere;
    static_cast<void>(Store::open_for_writing(folder.file(), IfMissing::create));
    std::thread poster([&] {
        auto store = Store::open_for_writing(folder.file(), IfMissing::refuse);
        DocumentStream stream(5);
        for (int i = 0; i < 60; ++i) static_cast<void>(post(store, stream.take(20), "mara"));
    });
    for (int i = 0; i < 5; ++i) {
        const auto proof = backup(Store::open_for_reading(folder.file()), elsewhere.file(std::to_string(i)));
        CHECK(proof.entries % 20 == 0);
    }
    poster.join();
    CHECK(head(Store::open_for_reading(folder.file()))->entry == 1200);
}
