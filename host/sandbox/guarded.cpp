#include "host/sandbox/guarded.hpp"

#include <sys/syscall.h>
#include <unistd.h>

#include <csetjmp>
#include <csignal>
#include <cstddef>
#include <cstring>
#include <vector>

#include "host/sandbox/child.hpp"
#include "host/sandbox/confine.hpp"

namespace flutebook::sandbox {
namespace {

const ChildReport* report_of_death = nullptr;
SignalWords words_of_death{};
thread_local const char* doing_now = nullptr;

struct Guard {
    sigjmp_buf back;
    std::uintptr_t address;
};
thread_local Guard* innermost = nullptr;

// Does only what is safe at any signal: constant texts, one write, and the end of the process.
[[noreturn]] void report_and_end(int signal, int system_call) {
    const bool is_forbidden = signal == SIGSYS || signal == SIGXFSZ;
    const char* name = ::sigabbrev_np(signal);
    const char* const parts[] = {"died ",
                                 is_forbidden ? words_of_death.forbidden : words_of_death.crash,
                                 is_forbidden ? " " : " crashed (SIG",
                                 is_forbidden      ? meaning_of(system_call)
                                 : name == nullptr ? "NAL"
                                                   : name,
                                 is_forbidden ? " while " : ") while ",
                                 doing_now == nullptr ? "another thread ran" : doing_now};
    ::_exit(report_of_death->say_at_signal(parts) ? 1 : 2);
}

void take(int signal, siginfo_t* about, void*) {
    if (innermost == nullptr || (signal != SIGSEGV && signal != SIGBUS))
        report_and_end(signal, signal == SIGSYS ? about->si_syscall : SYS_ftruncate);  // SIGXFSZ: a file would grow
    innermost->address = reinterpret_cast<std::uintptr_t>(about->si_addr);
    siglongjmp(innermost->back, 1);
}

// A separate stack for the signal handler of this thread: after a stack overflow the normal one has no room.
class AlternateStack {
public:
    AlternateStack() : memory_(size) {
        stack_t item{};
        item.ss_sp = memory_.data();
        item.ss_size = size;
        ::sigaltstack(&item, &before_);
    }
    ~AlternateStack() { ::sigaltstack(&before_, nullptr); }
    AlternateStack(const AlternateStack&) = delete;
    AlternateStack& operator=(const AlternateStack&) = delete;

private:
    static constexpr std::size_t size = std::size_t{64} << 10;
    std::vector<std::byte> memory_;
    stack_t before_{};
};

}  // namespace

void catch_signals(const ChildReport& report, SignalWords words) {
    report_of_death = &report;
    words_of_death = words;
    static const AlternateStack for_this_thread;
    struct sigaction how {};
    how.sa_sigaction = take;
    how.sa_flags = SA_SIGINFO | SA_ONSTACK | SA_NODEFER;
    for (const int signal : {SIGSEGV, SIGBUS, SIGFPE, SIGILL, SIGABRT, SIGTRAP, SIGSYS, SIGXFSZ})
        ::sigaction(signal, &how, nullptr);
}

CurrentTask::CurrentTask(const std::string& what) : before_(doing_now) {
    doing_now = what.c_str();
}

CurrentTask::~CurrentTask() {
    doing_now = before_;
}

std::optional<std::uintptr_t> guarded(const std::function<void()>& work) {
    Guard guard{};
    Guard* const outer = innermost;
    innermost = &guard;
    if (sigsetjmp(guard.back, 1) != 0) {
        innermost = outer;
        return guard.address;
    }
    work();
    innermost = outer;
    return std::nullopt;
}

}  // namespace flutebook::sandbox
