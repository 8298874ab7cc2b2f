#include "host/contract/running_model.hpp"

#include <sys/uio.h>
#include <unistd.h>

#include <array>
#include <atomic>
#include <csignal>
#include <cstddef>
#include <cstring>
#include <memory>

namespace flutebook::contract {
namespace {

constexpr int unfit_plugin = 3;  // the exit code
constexpr std::size_t most_threads = 256;
constexpr std::size_t stack_bytes = std::size_t{64} << 10;

// What each thread runs; null where it runs no model. Threads beyond the table are not named.
std::array<std::atomic<const RunningModel*>, most_threads> running{};
std::array<std::atomic<bool>, most_threads> is_taken{};

// The place of this thread in the table, and a stack on which the signal handler can work after the thread's own stack
// has overflowed.
class ThreadPlace {
public:
    ThreadPlace() : stack_(new std::byte[stack_bytes]) {
        while (place_ < most_threads && is_taken[place_].exchange(true)) ++place_;
        stack_t item{};
        item.ss_sp = stack_.get();
        item.ss_size = stack_bytes;
        ::sigaltstack(&item, &before_);
    }
    ~ThreadPlace() {
        ::sigaltstack(&before_, nullptr);
        if (place_ < most_threads) is_taken[place_] = false;
    }
    ThreadPlace(const ThreadPlace&) = delete;
    ThreadPlace& operator=(const ThreadPlace&) = delete;

    const RunningModel* set(const RunningModel* model) {
        innermost_ = model;
        if (place_ < most_threads) running[place_].store(model, std::memory_order_relaxed);
        return model;
    }
    [[nodiscard]] const RunningModel* innermost() const { return innermost_; }

private:
    std::unique_ptr<std::byte[]> stack_;
    stack_t before_{};
    std::size_t place_ = 0;
    const RunningModel* innermost_ = nullptr;
};

ThreadPlace& place() {
    thread_local ThreadPlace here;
    return here;
}
// The same for the signal handler, which must not create one.
thread_local const RunningModel* running_here = nullptr;

void write_line(const RunningModel& model, const char* what, int signal) {
    const char* name = ::sigabbrev_np(signal);
    const char* const parts[] = {"flutebook: ",
                                 model.file,
                                 ": model ",
                                 model.id,
                                 ": ",
                                 what,
                                 " (SIG",
                                 name == nullptr ? "NAL" : name,
                                 ") while ",
                                 model.doing,
                                 " in this program's own process; remove it from plugins.yaml, or isolate it\n"};
    std::array<iovec, std::size(parts)> pieces{};
    for (std::size_t i = 0; i < pieces.size(); ++i) pieces[i] = {const_cast<char*>(parts[i]), std::strlen(parts[i])};
    static_cast<void>(::writev(STDERR_FILENO, pieces.data(), static_cast<int>(pieces.size())) > 0);
}

void end_by(int signal) {
    ::signal(signal, SIG_DFL);
    ::raise(signal);
}

void at_fault(int signal) {
    if (running_here == nullptr) return end_by(signal);
    write_line(*running_here, "crashed", signal);
    ::_exit(unfit_plugin);
}

void at_end(int signal) {
    for (const auto& each : running)
        if (const RunningModel* model = each.load(std::memory_order_relaxed)) write_line(*model, "was stopped", signal);
    end_by(signal);
}

void handle(int signal, void (*by)(int)) {
    struct sigaction now {};
    if (::sigaction(signal, nullptr, &now) != 0 || now.sa_handler != SIG_DFL) return;
    struct sigaction how {};
    how.sa_handler = by;
    how.sa_flags = SA_ONSTACK | SA_NODEFER;
    ::sigaction(signal, &how, nullptr);
}

}  // namespace

RunningModel::RunningModel(const char* its_file, const char* its_id, const char* its_work)
    : file(its_file), id(its_id), doing(its_work), outer_(place().innermost()) {
    running_here = place().set(this);
}

RunningModel::~RunningModel() {
    running_here = place().set(outer_);
}

void name_models_at_fatal_signals() {
    for (const int signal : {SIGSEGV, SIGBUS, SIGFPE, SIGILL, SIGABRT, SIGTRAP, SIGSYS}) handle(signal, at_fault);
    for (const int signal : {SIGINT, SIGTERM, SIGALRM, SIGXCPU, SIGVTALRM, SIGPROF}) handle(signal, at_end);
}

}  // namespace flutebook::contract
