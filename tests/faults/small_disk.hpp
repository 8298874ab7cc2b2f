// A disk of a few hundred kilobytes.
#pragma once

#include <cstddef>
#include <filesystem>
#include <string>

namespace flutebook::fixture {

/// In memory, mounted while it lives. Only root may mount, and not everywhere: ask first.
class SmallDisk {
public:
    /// Whether this process can mount one at all.
    [[nodiscard]] static bool can_be_made();

    explicit SmallDisk(std::size_t bytes);
    SmallDisk(const SmallDisk&) = delete;
    SmallDisk& operator=(const SmallDisk&) = delete;
    ~SmallDisk();

    void resize(std::size_t bytes);
    void make_read_only();
    [[nodiscard]] std::string file(const std::string& name = "ledger.db") const { return (path_ / name).string(); }

private:
    std::filesystem::path path_;
};

}  // namespace flutebook::fixture
