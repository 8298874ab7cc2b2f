// Trust after a trial: a file is trusted once it has passed a trial in a process of its own, for as long as its bytes,
// the host and the contract stay the same. Records keep which files have passed.
#pragma once

#include <filesystem>
#include <optional>
#include <string>

#include "host/contract/trust.hpp"

namespace flutebook::plugin_check {

/// Which files have passed their trial, kept from one start to the next: one small file for each, named by the SHA-256
/// of its bytes, for one version of the host and of the contract.
///
/// A record counts only if it is intact, of this version, and in a folder that nobody else may write to; without one
/// the file is tried again. Records are replaced by renaming, so any number of processes may read and write them at
/// once.
class Records {
public:
    /// Without a folder nothing is kept.
    explicit Records(std::optional<std::filesystem::path> folder) : folder_(std::move(folder)) {}

    [[nodiscard]] bool has_passed(const std::string& sha256) const;
    /// Does nothing where the record cannot be written.
    void keep(const std::string& sha256) const;

private:
    std::optional<std::filesystem::path> folder_;
};

/// `$XDG_CACHE_HOME/flutebook`, else `~/.cache/flutebook`; nothing where neither is known.
[[nodiscard]] std::optional<std::filesystem::path> records_folder();

/// Any thread.
class TriedTrust : public contract::Trust {
public:
    /// `program` is started for each trial.
    TriedTrust(std::string program, Records records) : program_(std::move(program)), records_(std::move(records)) {}

    void check(const contract::PluginFile& file) override;

private:
    std::string program_;
    Records records_;
};

}  // namespace flutebook::plugin_check
