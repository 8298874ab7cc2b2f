#include "host/isolation/turn.hpp"

#include <linux/futex.h>
#include <sys/syscall.h>
#include <unistd.h>

#include <ctime>

namespace flutebook::isolation {
namespace {

// Looks before sleep: some microseconds, about what a sleep and the waking from it would cost.
constexpr int looks = 2000;

void breathe() {
#if defined(__x86_64__)
    __builtin_ia32_pause();
#elif defined(__aarch64__)
    __asm__ volatile("yield");
#endif
}

// The word must be a plain number to the system.
std::uint32_t* word(std::atomic<std::uint32_t>& number) {
    static_assert(sizeof(std::atomic<std::uint32_t>) == sizeof(std::uint32_t));
    return reinterpret_cast<std::uint32_t*>(&number);
}

}  // namespace

void Turn::set(std::uint32_t number) {
    number_.store(number);
    if (sleeps_.load() != 0) ::syscall(SYS_futex, word(number_), FUTEX_WAKE, 1, nullptr, nullptr, 0);
}

bool Turn::wait_for(std::uint32_t number, std::chrono::nanoseconds most) {
    for (int look = 0; look < looks; ++look) {
        if (number_.load(std::memory_order_acquire) == number) return true;
        breathe();
    }
    const auto seconds = std::chrono::duration_cast<std::chrono::seconds>(most);
    const timespec time{seconds.count(), (most - seconds).count()};
    // Said before the last look: whoever sets the number afterwards sees that somebody sleeps.
    sleeps_.store(1);
    const std::uint32_t seen = number_.load();
    if (seen != number) ::syscall(SYS_futex, word(number_), FUTEX_WAIT, seen, &time, nullptr, 0);
    sleeps_.store(0);
    return number_.load() == number;
}

}  // namespace flutebook::isolation
