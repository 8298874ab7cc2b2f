// Memory shared by two processes: an anonymous file whose size cannot change.
#pragma once

#include <cstddef>

namespace flutebook::sandbox {

/// Owns the mapping and the descriptor. The memory begins as zeros; a page is allocated when it is first used.
class SharedMemory {
public:
    /// Throws std::system_error where the memory cannot be had.
    explicit SharedMemory(std::size_t bytes);

    /// The memory of another process, whose descriptor this one received. Takes ownership of the descriptor.
    SharedMemory(int descriptor, std::size_t bytes);

    ~SharedMemory();
    SharedMemory(const SharedMemory&) = delete;
    SharedMemory& operator=(const SharedMemory&) = delete;

    [[nodiscard]] std::byte* at() const { return at_; }
    [[nodiscard]] std::size_t bytes() const { return bytes_; }
    /// This object keeps ownership.
    [[nodiscard]] int descriptor() const { return descriptor_; }

private:
    void map();

    int descriptor_;
    std::size_t bytes_;
    std::byte* at_ = nullptr;
};

}  // namespace flutebook::sandbox
