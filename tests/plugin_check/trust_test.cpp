// Which files the host trusts, which records it keeps, and that it ignores damaged records.
#include <catch2/catch.hpp>

#include <sys/stat.h>

#include <filesystem>
#include <fstream>
#include <sstream>

#include "host/base/errors.hpp"
#include "host/contract/plugin_file.hpp"
#include "host/installed_set/installed_set.hpp"
#include "host/plugin_check/rules.hpp"
#include "host/plugin_check/tried_trust.hpp"
#include "ledger/values/sha256.hpp"
#include "tests/plugin_check/running.hpp"

using namespace flutebook;
using check::plugin;
namespace fs = std::filesystem;

namespace {

constexpr const char* no_program = "/no/such/program";

// A folder for records, removed at the end of the test.
class Folder {
public:
    Folder() : path_(fs::temp_directory_path() / ("flutebook-records-" + std::to_string(::getpid()))) {
        fs::remove_all(path_);
    }
    ~Folder() { fs::remove_all(path_); }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
    [[nodiscard]] const fs::path& path() const { return path_; }

private:
    fs::path path_;
};

// Why the file is not trusted; empty where it is. Without a program only a record can make it trusted.
std::string refusal(const std::string& file, const std::optional<fs::path>& records,
                    const std::string& program = FLUTEBOOK_PROGRAM) {
    try {
        plugin_check::TriedTrust(program, plugin_check::Records(records)).check(contract::PluginFile::read(file));
    } catch (const ModelError& error) {
        return error.what();
    }
    return "";
}

bool is_remembered(const std::string& file, const fs::path& records) {
    const std::string said = refusal(file, records, no_program);
    if (!said.empty()) CHECK_THAT(said, Catch::Contains("model good: could not be tried: "));
    return said.empty();
}

fs::path record_of(const std::string& file, const fs::path& records) {
    return records / contract::PluginFile::read(file).sha256();
}

std::string text_of(const fs::path& path) {
    std::ostringstream text;
    text << std::ifstream(path, std::ios::binary).rdbuf();
    return text.str();
}

void write(const fs::path& path, const std::string& text) {
    std::ofstream(path, std::ios::binary | std::ios::trunc) << text;
}

}  // namespace

TEST_CASE("a file that passed its trial is trusted without another") {
    const Folder folder;
    CHECK_FALSE(is_remembered(plugin("good"), folder.path()));
    CHECK(refusal(plugin("good"), folder.path()) == "");
    CHECK(is_remembered(plugin("good"), folder.path()));
}

TEST_CASE("a file that failed is refused by name, and tried again the next time") {
    const Folder folder;
    for (int time = 0; time < 2; ++time)
        CHECK_THAT(
            refusal(plugin("crashes"), folder.path()),
            Catch::StartsWith(plugin("crashes") + ": model crashes: refused by its trial: it " + check::crashed));
    CHECK_THAT(refusal(plugin("crashes"), folder.path(), no_program), Catch::Contains("could not be tried"));
}

TEST_CASE("other bytes under the same name are another file") {
    const Folder folder;
    fs::create_directories(folder.path() / "plugins");
    const std::string copy = folder.path() / "plugins" / "good.so";
    fs::copy_file(plugin("good"), copy);
    CHECK(refusal(copy, folder.path()) == "");
    CHECK(is_remembered(copy, folder.path()));
    std::ofstream(copy, std::ios::binary | std::ios::app) << "one byte more";
    CHECK_FALSE(is_remembered(copy, folder.path()));
}

TEST_CASE("a damaged record is no record") {
    const Folder folder;
    REQUIRE(refusal(plugin("good"), folder.path()) == "");
    const fs::path record = record_of(plugin("good"), folder.path());
    const std::string good = text_of(record);
    for (std::size_t i = 0; i < good.size(); ++i) {
        std::string bad = good;
        bad[i] = static_cast<char>(bad[i] ^ 1);
        write(record, bad);
        INFO("byte " << i);
        REQUIRE_FALSE(is_remembered(plugin("good"), folder.path()));
    }
    for (const std::string& bad : {std::string(), good.substr(0, good.size() / 2), good + good, good + "\n"}) {
        write(record, bad);
        CHECK_FALSE(is_remembered(plugin("good"), folder.path()));
    }
    // The next check replaces it.
    CHECK(refusal(plugin("good"), folder.path()) == "");
    CHECK(text_of(record) == good);
}

TEST_CASE("a record of one file is none of another") {
    const Folder folder;
    REQUIRE(refusal(plugin("good"), folder.path()) == "");
    fs::copy_file(record_of(plugin("good"), folder.path()), record_of(plugin("crashes"), folder.path()));
    CHECK_THAT(refusal(plugin("crashes"), folder.path()), Catch::Contains("refused by its trial"));
}

TEST_CASE("records that others could have written are not believed") {
    const Folder folder;
    REQUIRE(refusal(plugin("good"), folder.path()) == "");
    ::chmod(folder.path().c_str(), 0777);
    CHECK_FALSE(is_remembered(plugin("good"), folder.path()));
    ::chmod(folder.path().c_str(), 0755);
    CHECK(is_remembered(plugin("good"), folder.path()));
    ::chmod(record_of(plugin("good"), folder.path()).c_str(), 0666);
    CHECK_FALSE(is_remembered(plugin("good"), folder.path()));
}

TEST_CASE("where nothing can be remembered every start tries again") {
    for (const std::optional<fs::path>& nowhere :
         {std::optional<fs::path>("/dev/null/cache"), std::optional<fs::path>()}) {
        CHECK(refusal(plugin("good"), nowhere) == "");
        CHECK_THAT(refusal(plugin("good"), nowhere, no_program), Catch::Contains("could not be tried"));
    }
}

TEST_CASE(
    "a pipe, a folder, a device, a link or a huge file in place of a record means trying again, and never waits") {
    const Folder folder;
    REQUIRE(refusal(plugin("good"), folder.path()) == "");
    const fs::path record = record_of(plugin("good"), folder.path());
    const auto replaced = [&](auto&& put) {
        fs::remove_all(record);
        put();
        CHECK_FALSE(is_remembered(plugin("good"), folder.path()));
        CHECK(refusal(plugin("good"), folder.path()) == "");
    };
    replaced([&] { REQUIRE(::mkfifo(record.c_str(), 0600) == 0); });
    replaced([&] { fs::create_directory(record); });
    replaced([&] { fs::create_symlink("/dev/zero", record); });
    replaced([&] {
        write(record, "");
        fs::resize_file(record, std::uintmax_t{1} << 40);  // takes no room on the disk
    });
    const std::string good = text_of(record);
    replaced([&] {
        write(folder.path() / "elsewhere", good);
        fs::create_symlink("elsewhere", record);
    });
}

TEST_CASE("a record of another set of rules means trying again") {
    const Folder folder;
    REQUIRE(refusal(plugin("good"), folder.path()) == "");
    const fs::path record = record_of(plugin("good"), folder.path());
    const std::string number = "rules " + std::to_string(plugin_check::rule_set) + "\n";
    std::string text = text_of(record);
    text = text.substr(0, text.find("checksum "));
    const auto at = text.find(number);
    REQUIRE(at != std::string::npos);
    const auto with_checksum = [](const std::string& of) {
        return of + "checksum " + ledger::to_hex(ledger::sha256(of)) + "\n";
    };
    write(record, with_checksum(text));
    CHECK(is_remembered(plugin("good"), folder.path()));
    text.replace(at, number.size(), "rules " + std::to_string(plugin_check::rule_set - 1) + "\n");
    write(record, with_checksum(text));
    CHECK_FALSE(is_remembered(plugin("good"), folder.path()));
}

TEST_CASE("the models that were built with the program need no trial and no record, and no other file is one of them") {
    plugin_check::TriedTrust trust(no_program, plugin_check::Records(std::nullopt), installed_set::installed_models());
    for (const auto* model : {"run", "scrap", "paper", "starch", "setup", "running", "energy", "consumables", "tooling",
                              "delivery", "outside-work"}) {
        const auto file = contract::PluginFile::read(std::string(FLUTEBOOK_PLUGIN_DIR) + "/" + model + ".so");
        CHECK(trust.is_installed(file));
        CHECK_NOTHROW(trust.check(file));
    }
    const auto good = contract::PluginFile::read(plugin("good"));
    CHECK_FALSE(trust.is_installed(good));
    CHECK_THROWS_WITH(trust.check(good), Catch::Contains("could not be tried"));
}

TEST_CASE("files that are tried side by side are each judged by themselves, also where one has two names") {
    const Folder folder;
    std::vector<contract::PluginFile> files;
    for (const auto* name : {"good", "crashes", "matters_seldom", "exits", "good"})
        files.push_back(contract::PluginFile::read(plugin(name)));
    std::vector<const contract::PluginFile*> all;
    for (const auto& file : files) all.push_back(&file);
    plugin_check::TriedTrust trust(FLUTEBOOK_PROGRAM, plugin_check::Records(folder.path()));
    trust.prepare(all);
    for (const std::size_t good : {std::size_t{0}, std::size_t{2}, std::size_t{4}})
        CHECK_NOTHROW(trust.check(files[good]));
    CHECK_THROWS_WITH(trust.check(files[1]), Catch::StartsWith(plugin("crashes") + ": model crashes: refused by"));
    CHECK_THROWS_WITH(trust.check(files[3]), Catch::StartsWith(plugin("exits") + ": model exits: refused by"));
    CHECK(is_remembered(plugin("good"), folder.path()));
}

TEST_CASE("records lie where the desktop's rules say") {
    ::setenv("XDG_CACHE_HOME", "/a/cache", 1);
    CHECK(plugin_check::records_folder() == fs::path("/a/cache/flutebook"));
    ::setenv("XDG_CACHE_HOME", "relative", 1);
    ::setenv("HOME", "/a/house", 1);
    CHECK(plugin_check::records_folder() == fs::path("/a/house/.cache/flutebook"));
    ::unsetenv("XDG_CACHE_HOME");
    ::unsetenv("HOME");
    CHECK(plugin_check::records_folder() == std::nullopt);
}
