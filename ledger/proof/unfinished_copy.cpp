#include "ledger/proof/unfinished_copy.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <cstring>
#include <filesystem>
#include <system_error>

#include "ledger/store/ledger_files.hpp"
#include "ledger/values/error.hpp"

namespace flutebook::ledger {

namespace {

namespace fs = std::filesystem;

[[noreturn]] void fail_copy(const std::string& file, const std::string& what, int error) {
    throw LedgerError(LedgerError::Kind::unfit,
                      fmt::format("{}: cannot be written: {}: {}; no copy was kept", file, what, std::strerror(error)));
}

[[noreturn]] void refuse_to_overwrite(const std::string& file) {
    throw LedgerError(LedgerError::Kind::refused,
                      file + ": exists already: a backup overwrites nothing; name another file");
}

void flush_folder(const std::string& file) {
    const int descriptor = open(folder_of(file).c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    const int error = descriptor >= 0 && fsync(descriptor) == 0 ? 0 : errno;
    if (descriptor >= 0) close(descriptor);
    if (error != 0) fail_copy(file, "its folder could not be flushed to disk", error);
}

bool is_copy_of_ledger(int descriptor) {
    std::array<char, 72> header{};
    return pread(descriptor, header.data(), header.size(), 0) == ssize_t{72} &&
           std::memcmp(header.data(), "SQLite format 3", 16) == 0 && std::memcmp(header.data() + 68, "FLUT", 4) == 0;
}

}  // namespace

UnfinishedCopy::UnfinishedCopy(const std::string& file, const std::string& original)
    : file_(file), part_(file, original, 1) {
    if (part_.error() != 0) fail_copy(file_, "no file can be made beside it", part_.error());
}

void UnfinishedCopy::finish() {
    if (const int error = part_.flush(); error != 0) fail_copy(file_, "it could not be flushed to disk", error);
    expect_free_name(file_);
    // Fails where the name was taken meanwhile.
    const int error = part_.give_name(UnfinishedFile::IfNamed::refuse);
    if (error == EEXIST) refuse_to_overwrite(file_);
    if (error != 0) fail_copy(file_, "the copy could not be given its name", error);
    flush_folder(file_);
}

void expect_free_name(const std::string& file) {
    std::error_code ignored;
    if (fs::exists(fs::symlink_status(file, ignored))) refuse_to_overwrite(file);
    for (const auto* end : {"-wal", "-journal"})
        if (fs::exists(file + end, ignored) && fs::file_size(file + end, ignored) > 0)
            throw LedgerError(LedgerError::Kind::refused,
                              fmt::format("{}: {}{} is there, which would be taken for the log of the copy; move it "
                                          "away, or name another file",
                                          file, file, end));
}

std::vector<std::string> clear_unfinished_copies(const std::string& file) {
    return clear_left_overs(file, is_copy_of_ledger);
}

}  // namespace flutebook::ledger
