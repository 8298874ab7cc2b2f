// Bytes flipped in the file by hand, and a log that was cut off: found, or without any effect.
#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>
#include <random>

#include "ledger/proof/verify.hpp"
#include "ledger/reading/entries.hpp"
#include "ledger/reading/records.hpp"
#include "ledger/writing/posting.hpp"
#include "tests/faults/deeds.hpp"
#include "tests/support/property.hpp"
#include "tests/unit/ledger/ledger_file.hpp"
#include "tests/unit/ledger/made_drafts.hpp"

using namespace flutebook;
using namespace flutebook::ledger;
using namespace flutebook::fixture;

namespace {

namespace fs = std::filesystem;

std::string bytes_of_file(const std::string& file) {
    std::ifstream in(file, std::ios::binary);
    std::string bytes(static_cast<std::size_t>(fs::file_size(file)), '\0');
    in.read(bytes.data(), static_cast<std::streamsize>(bytes.size()));
    return bytes;
}

void write_file(const std::string& file, const std::string& bytes) {
    std::ofstream(file, std::ios::binary | std::ios::trunc) << bytes;
}

// The first entry that the proof names bad; nothing where it holds.
std::optional<std::int64_t> first_bad(const std::string& file) {
    const auto proof = verify(Store::open_for_reading(file));
    if (proof.holds()) return std::nullopt;
    return proof.findings[0].entry.value_or(0);
}

// Flips bits of the sound ledger of that folder, each in a copy.
void flip_anywhere(const LedgerFolder& folder, int flips) {
    const auto sound = bytes_of_file(folder.file("sound.db"));
    const auto wanted = contents(folder.file("sound.db"));
    std::mt19937_64 random(20);
    int found = 0, harmless = 0;
    for (int flip = 0; flip < trials(flips); ++flip) {
        auto changed = sound;
        const auto at = random() % changed.size();
        changed[at] = static_cast<char>(changed[at] ^ (1 << (random() % 8)));
        INFO("bit in byte " << at);
        for (const auto* end : {"", "-wal", "-shm"}) fs::remove(folder.file() + end);
        write_file(folder.file(), changed);
        bool is_found = true;
        try {
            is_found = first_bad(folder.file()).has_value();
        } catch (const LedgerError& error) {
            CHECK(error.kind() == LedgerError::Kind::unfit);
        }
        ++(is_found ? found : harmless);
        if (!is_found) CHECK(contents(folder.file()) == wanted);
    }
    INFO(found << " were found, " << harmless << " changed nothing");
    CHECK(found > 0);
}

}  // namespace

TEST_CASE("a letter changed in the file by hand is found at the entry that it belongs to") {
    const LedgerFolder folder;
    std::vector<Draft> drafts = DocumentStream(1).take(60);
    for (std::size_t i = 0; i < drafts.size(); ++i) drafts[i].note = "note of document " + std::to_string(1000 + i);
    {
        auto store = Store::open_for_writing(folder.file(), IfMissing::create);
        static_cast<void>(post(store, drafts, "mara"));
    }
    const auto sound = bytes_of_file(folder.file());
    for (std::size_t i = 0; i < drafts.size(); i += 7) {
        INFO("entry " << i + 1);
        auto changed = sound;
        const auto at = changed.find(drafts[i].note);
        REQUIRE(at != std::string::npos);
        changed[at] = 'N';
        write_file(folder.file(), changed);
        CHECK(first_bad(folder.file()) == static_cast<std::int64_t>(i + 1));
    }
}

TEST_CASE("a letter changed by hand in a record of a quote is found, and so is one in its index") {
    const LedgerFolder folder;
    {
        auto store = Store::open_for_writing(folder.file(), IfMissing::create);
        QuoteDraft draft{"R-1001", {}};
        draft.attributes = {{"customer", "Ashlar Tiles and Bathrooms"}};
        static_cast<void>(save_quotes(store, {&draft, 1}, "mara"));
    }
    const auto sound = bytes_of_file(folder.file());
    int places = 0;
    for (auto at = sound.find("Ashlar Tiles"); at != std::string::npos; at = sound.find("Ashlar Tiles", at + 1)) {
        auto changed = sound;
        changed[at] = 'N';
        for (const auto* end : {"", "-wal", "-shm"}) fs::remove(folder.file() + end);
        write_file(folder.file(), changed);
        CHECK(first_bad(folder.file()).has_value());
        ++places;
    }
    CHECK(places == 2);  // the row and the index of texts
}

TEST_CASE("a bit flipped anywhere in the file is found, or changes nothing that the ledger holds") {
    const LedgerFolder folder;
    make_ledger(folder.file("sound.db"), 3, 120);
    flip_anywhere(folder, 250);
}

TEST_CASE("a bit flipped anywhere in a file of quotes and their records is found, or changes nothing") {
    const LedgerFolder folder;
    make_ledger(folder.file("sound.db"), 3, 0);
    {
        auto store = Store::open_for_writing(folder.file("sound.db"), IfMissing::refuse, still_clock());
        save_quotes_and_order(store);
        mark_quotes(store);
    }
    REQUIRE_FALSE(first_bad(folder.file("sound.db")));
    flip_anywhere(folder, 150);
}

TEST_CASE("a log that was cut off leaves whole postings, and a head that was kept tells what is gone") {
    const LedgerFolder folder;
    auto store = Store::open_for_writing(folder.file(), IfMissing::create, still_clock());
    DocumentStream stream(8);
    for (int posting = 0; posting < 12; ++posting) static_cast<void>(post(store, stream.take(10), writer));
    const auto kept = head(store)->hash;
    // Its log still beside it, as a power failure would leave it.
    const auto file = bytes_of_file(folder.file());
    const auto log = bytes_of_file(folder.file() + "-wal");
    std::mt19937_64 random(9);
    int shortened = 0;
    for (int cut = 0; cut < trials(150); ++cut) {
        const auto length = random() % (log.size() + 1);
        INFO("log of " << length << " bytes");
        const auto copy = folder.file("copy.db");
        for (const auto* end : {"", "-wal", "-shm"}) fs::remove(copy + end);
        write_file(copy, file);
        write_file(copy + "-wal", log.substr(0, length));
        if (run_behind(copy, "SELECT count(*) FROM sqlite_schema").at(0) == "0") continue;
        // With quotes' tables not there yet it is an older ledger.
        const auto proof = verify(Store::open_for_reading(copy));
        for (const auto& finding : proof.findings) UNSCOPED_INFO(finding.text);
        CHECK(proof.holds());
        CHECK(proof.entries % 10 == 0);
        const bool is_whole = proof.entries == 120;
        CHECK(verify(Store::open_for_reading(copy), kept).holds() == is_whole);
        if (!is_whole) ++shortened;
    }
    CHECK(shortened > 0);
}
