#include "host/contract/plugin_file.hpp"

#include <elf.h>
#include <fcntl.h>
#include <fmt/format.h>
#include <sys/mman.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <filesystem>
#include <system_error>
#include <utility>
#include <vector>

#include "host/base/errors.hpp"
#include "ledger/values/sha256.hpp"

// Kernels that ask for it refuse to run what was not made to be run; older ones do not know the word.
#ifndef MFD_EXEC
#define MFD_EXEC 0x0010U
#endif

namespace flutebook::contract {
namespace {

namespace fs = std::filesystem;

constexpr off_t most_bytes = off_t{256} << 20;

class Descriptor {
public:
    explicit Descriptor(int number) : number_(number) {}
    ~Descriptor() {
        if (number_ >= 0) ::close(number_);
    }
    Descriptor(const Descriptor&) = delete;
    Descriptor& operator=(const Descriptor&) = delete;
    [[nodiscard]] int get() const { return number_; }
    [[nodiscard]] int release() { return std::exchange(number_, -1); }

private:
    int number_;
};

std::string reason() {
    return std::generic_category().message(errno);
}

std::string id_of(const std::string& name) {
    return fs::path(name).stem().string();
}

[[noreturn]] void refuse(const std::string& name, const std::string& why) {
    throw ModelError(fmt::format("{}: model {}: {}", name, id_of(name), why));
}

std::vector<char> bytes_of(const std::string& name, int file, off_t size) {
    if (size > most_bytes)
        refuse(name, fmt::format("too large for a plugin: found {} bytes; link in less, at most {}", size, most_bytes));
    std::vector<char> bytes(static_cast<std::size_t>(size));
    std::size_t done = 0;
    while (done < bytes.size()) {
        const ssize_t more = ::read(file, bytes.data() + done, bytes.size() - done);
        if (more < 0 && errno == EINTR) continue;
        if (more < 0) refuse(name, fmt::format("cannot be read: {}; correct its permissions", reason()));
        if (more == 0) break;
        done += static_cast<std::size_t>(more);
    }
    bytes.resize(done);
    return bytes;
}

template <typename T>
bool read_at(const std::vector<char>& bytes, std::size_t at, T& into) {
    if (at > bytes.size() || sizeof(T) > bytes.size() - at) return false;
    std::memcpy(&into, bytes.data() + at, sizeof(T));
    return true;
}

// Whether a part that the loader maps lies past the end of the file, as after a copy that was broken off. The loader
// itself would not say so: the process would die at the first touch. All else that may be wrong it says.
bool is_cut_short(const std::vector<char>& bytes) {
    Elf64_Ehdr header;
    if (!read_at(bytes, 0, header) || std::memcmp(header.e_ident, ELFMAG, SELFMAG) != 0) return false;
    if (header.e_ident[EI_CLASS] != ELFCLASS64 || header.e_phentsize != sizeof(Elf64_Phdr)) return false;
    Elf64_Phdr part;
    for (std::size_t i = 0; i < header.e_phnum && read_at(bytes, header.e_phoff + i * sizeof part, part); ++i)
        if (part.p_type == PT_LOAD && (part.p_offset > bytes.size() || part.p_filesz > bytes.size() - part.p_offset))
            return true;
    return false;
}

std::string sha256_of(const std::vector<char>& bytes) {
    return ledger::to_hex(ledger::sha256({bytes.data(), bytes.size()}));
}

int sealed_copy(const std::string& name, const std::vector<char>& bytes) {
    int result = ::memfd_create("plugin", MFD_CLOEXEC | MFD_ALLOW_SEALING | MFD_EXEC);
    if (result < 0 && errno == EINVAL) result = ::memfd_create("plugin", MFD_CLOEXEC | MFD_ALLOW_SEALING);
    Descriptor copy(result);
    std::size_t done = 0;
    while (copy.get() >= 0 && done < bytes.size()) {
        const ssize_t more = ::write(copy.get(), bytes.data() + done, bytes.size() - done);
        if (more < 0 && errno != EINTR) break;
        if (more > 0) done += static_cast<std::size_t>(more);
    }
    if (copy.get() < 0 || done < bytes.size() ||
        ::fcntl(copy.get(), F_ADD_SEALS, F_SEAL_SHRINK | F_SEAL_GROW | F_SEAL_WRITE | F_SEAL_SEAL) != 0)
        refuse(name, fmt::format("cannot be copied into memory: {}; free some memory", reason()));
    return copy.release();
}

}  // namespace

PluginFile::PluginFile(std::string name, std::string sha256, int descriptor)
    : name_(std::move(name)), sha256_(std::move(sha256)), descriptor_(descriptor) {}

PluginFile::~PluginFile() {
    if (descriptor_ >= 0) ::close(descriptor_);
}

PluginFile::PluginFile(PluginFile&& other) noexcept
    : name_(std::move(other.name_)),
      sha256_(std::move(other.sha256_)),
      descriptor_(std::exchange(other.descriptor_, -1)),
      real_path_(std::move(other.real_path_)),
      own_mode_(other.own_mode_),
      folder_mode_(other.folder_mode_) {}

PluginFile PluginFile::read(const std::string& name) {
    // A pipe without a writer would keep the host waiting.
    const Descriptor file(::open(name.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK));
    struct stat about {};
    const bool is_there = file.get() >= 0 ? ::fstat(file.get(), &about) == 0 : errno != ENOENT && errno != ENOTDIR;
    if (is_there && file.get() < 0) refuse(name, fmt::format("cannot be read: {}; correct its permissions", reason()));
    if (!is_there || !S_ISREG(about.st_mode))
        refuse(name, "no such plugin file; build it, or remove the model from plugins.yaml");
    const std::vector<char> bytes = bytes_of(name, file.get(), about.st_size);
    if (is_cut_short(bytes)) refuse(name, "the file is cut short: its end is missing; copy it again");

    PluginFile result(name, sha256_of(bytes), sealed_copy(name, bytes));
    result.own_mode_ = about.st_mode;
    std::error_code unknown;
    result.real_path_ = fs::read_symlink(fmt::format("/proc/self/fd/{}", file.get()), unknown).string();
    if (::stat(fs::path(result.real_path_).parent_path().c_str(), &about) == 0) result.folder_mode_ = about.st_mode;
    return result;
}

PluginFile PluginFile::handed_over(const std::string& name, int descriptor) {
    return {name, "", descriptor};
}

std::string PluginFile::id() const {
    return id_of(name_);
}

void PluginFile::check_place() const {
    const fs::path folder = fs::path(real_path_).parent_path();
    std::error_code unknown;
    const fs::path expected = fs::canonical(fs::absolute(name_).parent_path(), unknown);
    if (folder != expected)
        refuse(name_, fmt::format("leads out of its folder: found {}; put the file itself into {}", real_path_,
                                  expected.string()));
    if ((own_mode_ & S_IWOTH) != 0)
        refuse(name_, fmt::format("anybody may write to it: found mode {:04o}; remove that permission: chmod o-w",
                                  own_mode_ & 07777U));
    if ((folder_mode_ & S_IWOTH) != 0)
        refuse(name_, fmt::format("anybody may write to its folder: found {} with mode {:04o}; remove that permission: "
                                  "chmod o-w",
                                  folder.string(), folder_mode_ & 07777U));
}

}  // namespace flutebook::contract
