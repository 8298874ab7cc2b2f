#include "host/plugin_worker/shared_counter.hpp"

#include <linux/futex.h>
#include <sys/syscall.h>
#include <unistd.h>

#include <ctime>
#include <thread>

namespace flutebook::plugin_worker {
namespace {

// How often the number is read before the process sleeps: some tens of microseconds. After each read the processor is
// yielded, most likely to the other process, which may need it to change the number.
constexpr int looks = 200;

// The system call takes a plain number.
std::uint32_t* word(std::atomic<std::uint32_t>& number) {
    static_assert(sizeof(std::atomic<std::uint32_t>) == sizeof(std::uint32_t));
    return reinterpret_cast<std::uint32_t*>(&number);
}

}  // namespace

void SharedCounter::set(std::uint32_t number) {
    number_.store(number);
    if (sleeps_.load() != 0) ::syscall(SYS_futex, word(number_), FUTEX_WAKE, 1, nullptr, nullptr, 0);
}

bool SharedCounter::look_for(std::uint32_t number) const {
    for (int look = 0; look < looks; ++look) {
        if (number_.load(std::memory_order_acquire) == number) return true;
        std::this_thread::yield();
    }
    return false;
}

bool SharedCounter::sleep_for(std::uint32_t number, std::chrono::nanoseconds most) {
    const auto seconds = std::chrono::duration_cast<std::chrono::seconds>(most);
    const timespec time{seconds.count(), (most - seconds).count()};
    // Set before the last read: a process that sets the number afterwards sees that this one sleeps.
    sleeps_.store(1);
    const std::uint32_t seen = number_.load();
    if (seen != number) ::syscall(SYS_futex, word(number_), FUTEX_WAIT, seen, &time, nullptr, 0);
    sleeps_.store(0);
    return number_.load() == number;
}

}  // namespace flutebook::plugin_worker
