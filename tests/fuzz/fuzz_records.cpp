// Mutated records of trials: a record counts only where it is, byte for byte, the one that was kept; anything else in
// its place means trying again, at once.
#include <sys/stat.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <string>

#include "host/plugin_check/tried_trust.hpp"
#include "tests/fuzz/fuzzer.hpp"

using namespace flutebook;
using fuzz::CaseEnd;
using fuzz::Draws;
using fuzz::WrongCase;
namespace fs = std::filesystem;

namespace {

const std::string sha256(64, 'a');

// A folder of records with one record in it, removed at the end.
class RecordFolder {
public:
    RecordFolder() : path_(fs::temp_directory_path() / ("flutebook-fuzz-" + std::to_string(::getpid()))) {
        fs::create_directories(path_);
        plugin_check::Records(path_).keep(sha256);
        good_ = fuzz::read_file(record().string());
    }
    ~RecordFolder() {
        std::error_code failed;
        fs::remove_all(path_, failed);
    }
    RecordFolder(const RecordFolder&) = delete;
    RecordFolder& operator=(const RecordFolder&) = delete;

    [[nodiscard]] const fs::path& path() const { return path_; }
    [[nodiscard]] fs::path record() const { return path_ / sha256; }
    [[nodiscard]] const std::string& good() const { return good_; }

private:
    fs::path path_;
    std::string good_;
};

// Puts something in the record's place; returns whether it is the good record.
bool replace(const RecordFolder& folder, Draws& draws, std::string& text) {
    const fs::path record = folder.record();
    fs::remove_all(record);
    const auto kind = draws.below(20);
    if (kind == 0) return ::mkfifo(record.c_str(), 0600) != 0;
    if (kind == 1) return !fs::create_directory(record);
    if (kind == 2) fs::create_symlink("/dev/zero", record);
    if (kind == 2) return false;
    text = draws.one_in(20) ? folder.good() : fuzz::mutated(folder.good(), draws);
    std::ofstream(record, std::ios::binary) << text;
    fs::permissions(record, fs::perms::owner_read | fs::perms::owner_write);
    if (kind == 3) fs::resize_file(record, std::uintmax_t{1} << 40);  // takes no room on the disk
    return kind != 3 && text == folder.good();
}

}  // namespace

int main(int count, char** words) {
    const RecordFolder folder;
    return fuzz::run_fuzzer(count, words, [&](Draws& draws) {
        std::string text;
        const bool is_good = replace(folder, draws, text);
        const bool has_passed = plugin_check::Records(folder.path()).has_passed(sha256);
        if (has_passed && !is_good) throw WrongCase{"a record that nobody kept is believed", text};
        if (!has_passed && is_good) throw WrongCase{"a good record is not believed", text};
        return has_passed ? CaseEnd::answered : CaseEnd::refused;
    });
}
