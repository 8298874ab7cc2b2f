#include "tests/unit/ledger/ledger_file.hpp"

#include <sqlite3.h>
#include <unistd.h>

#include <cstdlib>
#include <memory>
#include <stdexcept>

namespace flutebook::fixture {

namespace fs = std::filesystem;

namespace {

// In memory where the system has such a place: each commit waits for the disk, and a busy disk makes that long.
fs::path place_for_folders() {
    const fs::path memory = "/dev/shm";
    return access(memory.c_str(), W_OK) == 0 ? memory : fs::temp_directory_path();
}

}  // namespace

LedgerFolder::LedgerFolder() {
    auto name = (place_for_folders() / "flutebook-ledger-XXXXXX").string();
    if (mkdtemp(name.data()) == nullptr) throw std::runtime_error("no folder can be made for a ledger");
    path_ = name;
}

LedgerFolder::~LedgerFolder() {
    std::error_code ignored;
    fs::remove_all(path_, ignored);
}

std::vector<std::string> run_behind(const std::string& file, const std::string& sql) {
    sqlite3* opened = nullptr;
    const int code = sqlite3_open_v2(file.c_str(), &opened, SQLITE_OPEN_READWRITE, nullptr);
    const std::unique_ptr<sqlite3, decltype(&sqlite3_close)> closer(opened, sqlite3_close);
    if (code != SQLITE_OK) throw std::runtime_error(sqlite3_errmsg(opened));
    std::vector<std::string> answers;
    const auto take = [](void* into, int, char** values, char**) {
        static_cast<std::vector<std::string>*>(into)->emplace_back(values[0] == nullptr ? "" : values[0]);
        return 0;
    };
    if (sqlite3_exec(opened, sql.c_str(), take, &answers, nullptr) != SQLITE_OK)
        throw std::runtime_error(sqlite3_errmsg(opened));
    return answers;
}

void forge(const std::string& file, const std::string& sql) {
    const auto triggers = run_behind(file, "SELECT sql FROM sqlite_schema WHERE type = 'trigger'");
    for (const auto& name : run_behind(file, "SELECT name FROM sqlite_schema WHERE type = 'trigger'"))
        run_behind(file, "DROP TRIGGER " + name);
    run_behind(file, sql);
    for (const auto& trigger : triggers) run_behind(file, trigger);
}

}  // namespace flutebook::fixture
