#include "host/plugin_check/tried_trust.hpp"

#include <fcntl.h>
#include <flutebook/plugin.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cstdlib>
#include <exception>
#include <mutex>
#include <system_error>
#include <thread>
#include <utility>

#include "host/base/errors.hpp"
#include "host/plugin_check/trial.hpp"
#include "ledger/values/sha256.hpp"

namespace flutebook::plugin_check {
namespace {

namespace fs = std::filesystem;

// The text of a valid record, with its checksum at the end.
std::string record(const std::string& sha256) {
    const std::string text =
        fmt::format("flutebook plugin record 2\nfile {}\nhost {}\ncontract {}.{}\nrules {}\npassed its trial\n", sha256,
                    FLUTEBOOK_VERSION, FLUTEBOOK_MAJOR, FLUTEBOOK_MINOR, rule_set);
    return fmt::format("{}checksum {}\n", text, ledger::to_hex(ledger::sha256(text)));
}

// Whether it belongs to this user and nobody else may write to it: a writer could make the host trust any file.
bool is_private(const struct stat& about) {
    return about.st_uid == ::geteuid() && (about.st_mode & (S_IWGRP | S_IWOTH)) == 0;
}

bool is_private_folder(const fs::path& path) {
    struct stat about {};
    return ::stat(path.c_str(), &about) == 0 && S_ISDIR(about.st_mode) && is_private(about);
}

// The text of a private, regular file of this size; nothing where it is anything else. A pipe, a device, a link or a
// file of any size in its place keeps the host neither waiting nor reading.
std::optional<std::string> text_of_private_file(const fs::path& path, std::size_t size) {
    const int file = ::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK | O_NOFOLLOW);
    if (file < 0) return std::nullopt;
    struct stat about {};
    std::string text(size, ' ');
    const bool is_read = ::fstat(file, &about) == 0 && S_ISREG(about.st_mode) && is_private(about) &&
                         about.st_size == static_cast<off_t>(size) &&
                         ::read(file, text.data(), size) == static_cast<ssize_t>(size);
    ::close(file);
    return is_read ? std::optional<std::string>(std::move(text)) : std::nullopt;
}

bool write_new(const fs::path& path, const std::string& text) {
    const int file = ::open(path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0600);
    if (file < 0) return false;
    const bool is_written = ::write(file, text.data(), text.size()) == static_cast<ssize_t>(text.size());
    return ::close(file) == 0 && is_written;
}

// Why the file is not trusted after its trial; empty where it is.
std::string refusal_of(const contract::PluginFile& file, const std::string& program) {
    try {
        const CheckFindings findings = try_plugin(file, asked_for_trust(program));
        if (findings.has_passed()) return "";
        const RuleFinding* broken = findings.broken();
        if (broken == nullptr)
            return file.where() + ": refused by its trial: not every rule was tried; try `flutebook plugin check`";
        if (broken->rule->is_in_hosts_words()) return fmt::format("{}: {}", file.where(), broken->text);
        return fmt::format("{}: refused by its trial: it {}; ask its author, or remove it from plugins.yaml",
                           file.where(), broken->text);
    } catch (const std::exception& error) {
        return error.what();
    }
}

}  // namespace

bool Records::has_passed(const std::string& sha256) const {
    if (!folder_ || !is_private_folder(*folder_)) return false;
    const std::string expected = record(sha256);
    return text_of_private_file(*folder_ / sha256, expected.size()) == expected;
}

void Records::keep(const std::string& sha256) const {
    if (!folder_) return;
    std::error_code failed;
    fs::create_directories(*folder_, failed);
    if (!is_private_folder(*folder_)) return;
    const fs::path fresh = *folder_ / fmt::format("{}.{}", sha256, ::getpid());
    fs::remove(fresh, failed);
    if (fs::is_directory(*folder_ / sha256, failed)) fs::remove(*folder_ / sha256, failed);
    if (write_new(fresh, record(sha256))) fs::rename(fresh, *folder_ / sha256, failed);
    fs::remove(fresh, failed);
}

std::optional<fs::path> records_folder() {
    const auto absolute = [](const char* name) -> std::optional<fs::path> {
        const char* value = std::getenv(name);
        if (value == nullptr || !fs::path(value).is_absolute()) return std::nullopt;
        return fs::path(value);
    };
    if (const auto cache = absolute("XDG_CACHE_HOME")) return *cache / "flutebook";
    if (const auto home = absolute("HOME")) return *home / ".cache" / "flutebook";
    return std::nullopt;
}

void TriedTrust::prepare(const std::vector<const contract::PluginFile*>& files) {
    std::map<std::string, const contract::PluginFile*> untried;  // the same bytes once
    for (const contract::PluginFile* file : files)
        if (!is_installed(*file) && refusals_.count(file->sha256()) == 0 && !records_.has_passed(file->sha256()))
            untried.emplace(file->sha256(), file);
    for (const auto& [sha256, file] : untried) refusals_.emplace(sha256, "");
    std::mutex mutex;
    auto next = untried.begin();
    const auto take = [&]() -> const contract::PluginFile* {
        const std::lock_guard lock(mutex);
        return next == untried.end() ? nullptr : (next++)->second;
    };
    const auto work = [&] {
        while (const contract::PluginFile* file = take()) {
            std::string refusal = refusal_of(*file, program_);
            if (refusal.empty()) records_.keep(file->sha256());
            const std::lock_guard lock(mutex);
            refusals_[file->sha256()] = std::move(refusal);
        }
    };
    const std::size_t most = std::clamp<std::size_t>(std::thread::hardware_concurrency(), 1, 8);
    std::vector<std::jthread> others;
    for (std::size_t i = 1; i < std::min(most, untried.size()); ++i) others.emplace_back(work);
    work();
}

void TriedTrust::check(const contract::PluginFile& file) {
    prepare({&file});
    if (const auto found = refusals_.find(file.sha256()); found != refusals_.end() && !found->second.empty())
        throw ModelError(found->second);
}

bool TriedTrust::is_installed(const contract::PluginFile& file) const {
    return std::find(installed_.begin(), installed_.end(), file.sha256()) != installed_.end();
}

}  // namespace flutebook::plugin_check
