// A ledger's file in a folder of its own, and a way into it behind the ledger's back.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

namespace flutebook::fixture {

/// A folder that is gone, with all in it, when this is.
class LedgerFolder {
public:
    LedgerFolder();
    LedgerFolder(const LedgerFolder&) = delete;
    LedgerFolder& operator=(const LedgerFolder&) = delete;
    ~LedgerFolder();

    [[nodiscard]] std::string file(const std::string& name = "ledger.db") const { return (path_ / name).string(); }
    [[nodiscard]] const std::filesystem::path& path() const { return path_; }

private:
    std::filesystem::path path_;
};

/// Runs SQL on a file as anybody with a database shell could, and answers with the first column of each row. Throws
/// std::runtime_error with what the database said.
std::vector<std::string> run_behind(const std::string& file, const std::string& sql);

/// The same with every trigger of the file taken away first, and put back as it was afterwards.
void forge(const std::string& file, const std::string& sql);

}  // namespace flutebook::fixture
