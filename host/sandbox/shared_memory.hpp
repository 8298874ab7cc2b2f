// Memory that two processes have in common: a file without a name, whose size is sealed.
#pragma once

#include <cstddef>

namespace flutebook::sandbox {

/// Owns the mapping and the descriptor. Zeros at first; pages are taken as they are touched.
class SharedMemory {
public:
    /// Throws std::system_error where there is none to be had.
    explicit SharedMemory(std::size_t bytes);

    /// What another process made and handed over. Takes the descriptor.
    SharedMemory(int descriptor, std::size_t bytes);

    ~SharedMemory();
    SharedMemory(const SharedMemory&) = delete;
    SharedMemory& operator=(const SharedMemory&) = delete;

    [[nodiscard]] std::byte* at() const { return at_; }
    [[nodiscard]] std::size_t bytes() const { return bytes_; }
    /// Lent, for as long as this lives.
    [[nodiscard]] int descriptor() const { return descriptor_; }

private:
    void map();

    int descriptor_;
    std::size_t bytes_;
    std::byte* at_ = nullptr;
};

}  // namespace flutebook::sandbox
