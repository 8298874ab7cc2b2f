// Trust after a trial: a file is trusted once it has passed every rule in a process of its own, for as long as its
// bytes, the host, the contract and the set of rules stay the same. Records keep which files have passed. The files
// that were built with the program passed when it was built.
#pragma once

#include <filesystem>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "host/contract/trust.hpp"

namespace flutebook::plugin_check {

/// Which files have passed their trial, kept from one start to the next: one small file for each, named by the SHA-256
/// of its bytes, for one version of the host, of the contract and of the rules.
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

/// One thread.
class TriedTrust : public contract::Trust {
public:
    /// `program` is started for each trial. Files with a SHA-256 in `installed`, which must outlive this object, are
    /// trusted without one.
    TriedTrust(std::string program, Records records, std::span<const std::string_view> installed = {})
        : program_(std::move(program)), records_(std::move(records)), installed_(installed) {}

    /// Tries the files that need it, several at a time.
    void prepare(const std::vector<const contract::PluginFile*>& files) override;
    void check(const contract::PluginFile& file) override;
    [[nodiscard]] bool is_installed(const contract::PluginFile& file) const override;

private:
    std::string program_;
    Records records_;
    std::span<const std::string_view> installed_;
    std::map<std::string, std::string> refusals_;  // by SHA-256; empty where the file passed
};

}  // namespace flutebook::plugin_check
