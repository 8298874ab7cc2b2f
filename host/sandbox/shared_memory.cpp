#include "host/sandbox/shared_memory.hpp"

#include <fcntl.h>
#include <sys/mman.h>
#include <unistd.h>

#include <cerrno>
#include <system_error>

namespace flutebook::sandbox {
namespace {

// The size is sealed: if the other process could shorten the file, reading it would raise SIGBUS.
int sealed(std::size_t bytes) {
    const int result = ::memfd_create("block", MFD_CLOEXEC | MFD_ALLOW_SEALING);
    if (result < 0) return result;
    if (::ftruncate(result, static_cast<off_t>(bytes)) == 0 &&
        ::fcntl(result, F_ADD_SEALS, F_SEAL_SHRINK | F_SEAL_GROW | F_SEAL_SEAL) == 0)
        return result;
    const int reason = errno;
    ::close(result);
    errno = reason;
    return -1;
}

}  // namespace

SharedMemory::SharedMemory(std::size_t bytes) : descriptor_(sealed(bytes)), bytes_(bytes) {
    map();
}

SharedMemory::SharedMemory(int descriptor, std::size_t bytes) : descriptor_(descriptor), bytes_(bytes) {
    map();
}

SharedMemory::~SharedMemory() {
    ::munmap(at_, bytes_);
    ::close(descriptor_);
}

void SharedMemory::map() {
    if (descriptor_ < 0) throw std::system_error(errno, std::generic_category(), "no shared memory");
    void* at = ::mmap(nullptr, bytes_, PROT_READ | PROT_WRITE, MAP_SHARED, descriptor_, 0);
    if (at == MAP_FAILED) {
        const int reason = errno;
        ::close(descriptor_);
        throw std::system_error(reason, std::generic_category(), "no shared memory");
    }
    at_ = static_cast<std::byte*>(at);
}

}  // namespace flutebook::sandbox
