#include "host/sandbox/child.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <poll.h>
#include <spawn.h>
#include <sys/syscall.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <csignal>
#include <cstdint>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <system_error>
#include <thread>
#include <utility>

namespace flutebook::sandbox {
namespace {

constexpr int first_handed_over = 3;
constexpr int clear_of_targets = 64;  // above every descriptor number that the child uses

[[noreturn]] void fail(int error, const char* what) {
    throw std::system_error(error, std::generic_category(), what);
}

// Owns a descriptor of this process; the descriptor is closed in every program that the process starts.
class OwnedDescriptor {
public:
    explicit OwnedDescriptor(int number) : number_(number) {
        if (number < 0) fail(errno, "no descriptor for a child process");
    }
    ~OwnedDescriptor() {
        if (number_ >= 0) ::close(number_);
    }
    OwnedDescriptor(OwnedDescriptor&& other) noexcept : number_(std::exchange(other.number_, -1)) {}
    OwnedDescriptor& operator=(OwnedDescriptor&&) = delete;
    OwnedDescriptor(const OwnedDescriptor&) = delete;
    OwnedDescriptor& operator=(const OwnedDescriptor&) = delete;
    [[nodiscard]] int get() const { return number_; }
    [[nodiscard]] int release() { return std::exchange(number_, -1); }

private:
    int number_;
};

class Actions {
public:
    Actions() { ::posix_spawn_file_actions_init(&all_); }
    ~Actions() { ::posix_spawn_file_actions_destroy(&all_); }
    Actions(const Actions&) = delete;
    Actions& operator=(const Actions&) = delete;
    void take(int from, int as) { check(::posix_spawn_file_actions_adddup2(&all_, from, as)); }
    void open(int as, const char* path, int how) { check(::posix_spawn_file_actions_addopen(&all_, as, path, how, 0)); }
    [[nodiscard]] const posix_spawn_file_actions_t* get() const { return &all_; }

private:
    static void check(int error) {
        if (error != 0) fail(error, "cannot prepare a child process");
    }
    posix_spawn_file_actions_t all_{};
};

// The child starts in a session of its own, which has no terminal, with the default handling of every signal.
class Attributes {
public:
    Attributes() {
        ::posix_spawnattr_init(&all_);
        sigset_t signals;
        sigfillset(&signals);
        ::posix_spawnattr_setsigdefault(&all_, &signals);
        sigemptyset(&signals);
        ::posix_spawnattr_setsigmask(&all_, &signals);
        ::posix_spawnattr_setflags(&all_, POSIX_SPAWN_SETSID | POSIX_SPAWN_SETSIGDEF | POSIX_SPAWN_SETSIGMASK);
    }
    ~Attributes() { ::posix_spawnattr_destroy(&all_); }
    Attributes(const Attributes&) = delete;
    Attributes& operator=(const Attributes&) = delete;
    [[nodiscard]] const posix_spawnattr_t* get() const { return &all_; }

private:
    posix_spawnattr_t all_{};
};

}  // namespace

Child::Child(const std::string& program, const std::vector<std::string>& words, const std::vector<int>& descriptors,
             std::optional<int> output) {
    std::array<int, 2> life{};
    if (::pipe2(life.data(), O_CLOEXEC) != 0) fail(errno, "no pipe for a child process");
    OwnedDescriptor ours(life[1]);
    const OwnedDescriptor theirs(life[0]);

    Actions actions;
    actions.take(theirs.get(), STDIN_FILENO);
    std::vector<OwnedDescriptor> moved;  // first to numbers that do not clash with those of the child
    for (const int standard : {STDOUT_FILENO, STDERR_FILENO}) {
        if (!output) actions.open(standard, "/dev/null", O_WRONLY);
        if (output) moved.emplace_back(::fcntl(*output, F_DUPFD_CLOEXEC, clear_of_targets));
        if (output) actions.take(moved.back().get(), standard);
    }
    const std::size_t standards = moved.size();
    for (const int descriptor : descriptors) moved.emplace_back(::fcntl(descriptor, F_DUPFD_CLOEXEC, clear_of_targets));
    for (std::size_t i = standards; i < moved.size(); ++i)
        actions.take(moved[i].get(), first_handed_over + static_cast<int>(i - standards));

    std::vector<std::string> all = {program};
    all.insert(all.end(), words.begin(), words.end());
    std::vector<char*> pointers;
    for (std::string& word : all) pointers.push_back(word.data());
    pointers.push_back(nullptr);
    const Attributes attributes;
    const int error = ::posix_spawn(&id_, program.c_str(), actions.get(), attributes.get(), pointers.data(), ::environ);
    if (error != 0) fail(error, "cannot start a child process");
    life_ = ours.release();
    // A system call, because the C library's header does not declare it with C linkage.
    end_ = static_cast<int>(::syscall(SYS_pidfd_open, id_, 0));
    if (end_ < 0) {
        const int reason = errno;
        finish();
        ::close(life_);
        fail(reason, "cannot watch a child process");
    }
}

Child::~Child() {
    finish();
    ::close(end_);
    ::close(life_);
}

std::size_t Child::resident_bytes() const {
    std::ifstream about("/proc/" + std::to_string(id_) + "/statm");
    std::size_t all = 0;
    std::size_t resident = 0;
    about >> all >> resident;
    return resident * static_cast<std::size_t>(::sysconf(_SC_PAGESIZE));
}

std::map<pid_t, ThreadActivity> Child::activity() const {
    namespace fs = std::filesystem;
    std::map<pid_t, ThreadActivity> result;
    std::error_code ended;
    for (fs::directory_iterator thread("/proc/" + std::to_string(id_) + "/task", ended), last; !ended && thread != last;
         thread.increment(ended)) {
        std::ifstream times(thread->path() / "schedstat"), about(thread->path() / "stat");
        std::int64_t ran = 0;
        std::int64_t waited = 0;
        std::string line;
        if (!(times >> ran >> waited) || !std::getline(about, line)) continue;
        // The state stands behind the name, which may hold anything but ends with the last bracket.
        const std::size_t name_end = line.rfind(") ");
        const bool is_runnable = name_end != std::string::npos && line.compare(name_end, 3, ") R") == 0;
        result[std::stoi(thread->path().filename())] = {is_runnable, std::chrono::nanoseconds(ran),
                                                        std::chrono::nanoseconds(waited)};
    }
    return result;
}

std::optional<Ended> Child::ended() const {
    if (finished_) return finished_;
    siginfo_t how{};
    // WNOWAIT: until the parent has waited for the child, the system gives its process and group numbers to no other
    // process.
    if (::waitid(P_PID, static_cast<id_t>(id_), &how, WEXITED | WNOHANG | WNOWAIT) != 0 || how.si_pid == 0)
        return std::nullopt;
    return how.si_code == CLD_EXITED ? Ended{how.si_status, 0} : Ended{0, how.si_status};
}

Ended Child::finish() {
    if (finished_) return *finished_;
    ::kill(-id_, SIGKILL);
    siginfo_t how{};
    while (::waitid(P_PID, static_cast<id_t>(id_), &how, WEXITED) != 0 && errno == EINTR) {
    }
    finished_ = how.si_code == CLD_EXITED ? Ended{how.si_status, 0} : Ended{0, how.si_status};
    return *finished_;
}

std::string own_program() {
    return "/proc/self/exe";
}

void end_with_parent() {
    std::thread([] {
        pollfd parent{STDIN_FILENO, 0, 0};
        while (::poll(&parent, 1, -1) < 0 && errno == EINTR) {
        }
        ::kill(0, SIGKILL);
    }).detach();
}

std::string ending(const Ended& ended) {
    switch (ended.signal) {
        case 0:
            return fmt::format("ended its process with code {}", ended.code);
        case SIGKILL:
            return "was killed (SIGKILL)";
        case SIGSYS:
            return "made a system call that no model needs (SIGSYS)";
        default:
            return fmt::format("crashed ({})", signal_name(ended.signal));
    }
}

std::string signal_name(int signal) {
    const char* short_name = ::sigabbrev_np(signal);
    return short_name == nullptr ? "signal " + std::to_string(signal) : std::string("SIG") + short_name;
}

}  // namespace flutebook::sandbox
