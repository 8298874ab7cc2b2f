// A number in shared memory that one process moves on and another waits for.
#pragma once

#include <atomic>
#include <chrono>
#include <cstdint>

namespace flutebook::plugin_worker {

/// One process sets, one waits. Another writer of the memory can disturb the waiting, and nothing else.
class SharedCounter {
public:
    /// Sets the number and wakes who waits for it.
    void set(std::uint32_t number);

    /// Whether it comes to be `number` within some tens of microseconds; awake all the while, but making way for
    /// others.
    [[nodiscard]] bool look_for(std::uint32_t number) const;

    /// Whether it has come to be `number`, sleeping at most this long, or less.
    [[nodiscard]] bool sleep_for(std::uint32_t number, std::chrono::nanoseconds most);

private:
    std::atomic<std::uint32_t> number_ = 0;
    std::atomic<std::uint32_t> sleeps_ = 0;  // whether anybody must be woken
    static_assert(std::atomic<std::uint32_t>::is_always_lock_free);
};

}  // namespace flutebook::plugin_worker
