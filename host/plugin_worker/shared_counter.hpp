// A number in shared memory that one process increases and another waits for.
#pragma once

#include <atomic>
#include <chrono>
#include <cstdint>

namespace flutebook::plugin_worker {

/// One process sets the number, one waits for it. If anything else writes to the memory, only the waiting is disturbed.
class SharedCounter {
public:
    /// Sets the number and wakes the process that waits for it.
    void set(std::uint32_t number);

    /// Whether it becomes `number` within some tens of microseconds. Does not sleep, but yields the processor.
    [[nodiscard]] bool look_for(std::uint32_t number) const;

    /// Sleeps at most this long, and returns whether the number is then `number`.
    [[nodiscard]] bool sleep_for(std::uint32_t number, std::chrono::nanoseconds most);

private:
    std::atomic<std::uint32_t> number_ = 0;
    std::atomic<std::uint32_t> sleeps_ = 0;  // 1 while a process sleeps
    static_assert(std::atomic<std::uint32_t>::is_always_lock_free);
};

}  // namespace flutebook::plugin_worker
