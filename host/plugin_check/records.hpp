// Which files have passed their trial, kept from one start to the next: a small file for each, under the SHA-256 of
// its bytes, for one version of the host and of the contract.
//
// A record that is damaged, of another version, or in a folder that others may write to is as good as none: the file
// is tried again. So is everything where no record can be written. Records are replaced by renaming, so that any
// number of processes may read and write them at once.
#pragma once

#include <filesystem>
#include <optional>
#include <string>

namespace flutebook::plugin_check {

class Records {
public:
    /// Nothing: nothing is remembered.
    explicit Records(std::optional<std::filesystem::path> folder) : folder_(std::move(folder)) {}

    [[nodiscard]] bool has_passed(const std::string& sha256) const;
    /// Forgets it silently where it cannot be kept.
    void keep(const std::string& sha256) const;

private:
    std::optional<std::filesystem::path> folder_;
};

/// `$XDG_CACHE_HOME/flutebook`, else `~/.cache/flutebook`; nothing where neither is known.
[[nodiscard]] std::optional<std::filesystem::path> records_folder();

}  // namespace flutebook::plugin_check
