#include "tests/faults/small_disk.hpp"

#include <sys/mount.h>
#include <unistd.h>

#include <cstdlib>
#include <stdexcept>

namespace flutebook::fixture {

namespace {

std::string size_option(std::size_t bytes) {
    return "size=" + std::to_string(bytes);
}

}  // namespace

bool SmallDisk::can_be_made() {
    if (geteuid() != 0) return false;
    try {
        const SmallDisk tried(65536);
        return true;
    } catch (const std::runtime_error&) {
        return false;
    }
}

SmallDisk::SmallDisk(std::size_t bytes) {
    auto name = (std::filesystem::temp_directory_path() / "flutebook-disk-XXXXXX").string();
    if (mkdtemp(name.data()) == nullptr) throw std::runtime_error("no folder can be made for a disk");
    path_ = name;
    if (mount("none", name.c_str(), "tmpfs", 0, size_option(bytes).c_str()) == 0) return;
    rmdir(name.c_str());
    throw std::runtime_error("no disk can be mounted");
}

SmallDisk::~SmallDisk() {
    umount2(path_.c_str(), MNT_DETACH);
    rmdir(path_.c_str());
}

void SmallDisk::resize(std::size_t bytes) {
    if (mount("none", path_.c_str(), "tmpfs", MS_REMOUNT, size_option(bytes).c_str()) != 0)
        throw std::runtime_error("the disk cannot be made larger");
}

void SmallDisk::make_read_only() {
    if (mount("none", path_.c_str(), "tmpfs", MS_REMOUNT | MS_RDONLY, nullptr) != 0)
        throw std::runtime_error("the disk cannot be made read-only");
}

}  // namespace flutebook::fixture
