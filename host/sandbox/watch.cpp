#include "host/sandbox/watch.hpp"

#include <fcntl.h>
#include <poll.h>
#include <sys/socket.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <map>
#include <optional>
#include <string_view>
#include <system_error>
#include <utility>

namespace flutebook::sandbox {
namespace {

using Clock = std::chrono::steady_clock;

// How often the child's memory and time are checked; a child allocates no more than some MB in this time.
constexpr std::chrono::milliseconds glance{10};
constexpr std::chrono::milliseconds longest_look = 5 * glance;  // a longer one was this process's own wait
constexpr std::size_t most_printed = 200;                       // bytes that are kept

// Two connected descriptors: one for this process, one for the child.
class Pair {
public:
    enum class Kind { socket, pipe };
    explicit Pair(Kind kind) {
        const int failed = kind == Kind::socket ? ::socketpair(AF_UNIX, SOCK_STREAM | SOCK_CLOEXEC, 0, ends_.data())
                                                : ::pipe2(ends_.data(), O_CLOEXEC);
        if (failed != 0) throw std::system_error(errno, std::generic_category(), "no pipe for a child process");
    }
    ~Pair() {
        ::close(ends_[0]);
        close_theirs();
    }
    Pair(const Pair&) = delete;
    Pair& operator=(const Pair&) = delete;
    [[nodiscard]] int ours() const { return ends_[0]; }
    [[nodiscard]] int theirs() const { return ends_[1]; }
    void close_theirs() {
        if (ends_[1] >= 0) ::close(ends_[1]);
        ends_[1] = -1;
    }

private:
    std::array<int, 2> ends_{};
};

bool has_more(int descriptor) {
    pollfd one{descriptor, POLLIN, 0};
    return ::poll(&one, 1, 0) > 0 && (one.revents & POLLIN) != 0;
}

// What comes from a child, while it runs.
class ChildWatch {
public:
    ChildWatch(Child& child, int report, int output, Listener& listener, const ChildLimits& limits)
        : child_(child), report_(report), output_(output), listener_(listener), limits_(limits) {}

    Stopped run() {
        while (wait_for_more()) {
            if (const auto stopped = overrun()) {
                child_.finish();
                return *stopped;
            }
        }
        read_the_rest();
        child_.finish();
        return is_false_ ? Stopped::false_report : Stopped::by_itself;
    }

    [[nodiscard]] const std::string& printed() const { return printed_; }

private:
    [[nodiscard]] bool is_out_of_time() const {
        return used_ >= limits_.whole || used_ - used_at_line_ >= limits_.silence;
    }

    // Waits a moment; false when the child has ended and nothing more comes.
    bool wait_for_more() {
        std::array<pollfd, 3> all = {pollfd{child_.end_descriptor(), POLLIN, 0}, pollfd{report_, POLLIN, 0},
                                     pollfd{output_, POLLIN, 0}};
        const int ready = ::poll(all.data(), all.size(), static_cast<int>(glance.count()));
        if (ready <= 0) return true;
        if (all[1].revents != 0) hear();
        if (all[2].revents != 0) read_output();
        return all[1].revents != 0 || all[2].revents != 0 || all[0].revents == 0;
    }

    std::optional<Stopped> overrun() {
        add_used_time();
        if (is_false_) return Stopped::false_report;
        if (child_.resident_bytes() > limits_.resident_bytes && !child_.ended()) return Stopped::out_of_memory;
        if (is_out_of_time() && !child_.ended()) return Stopped::out_of_time;
        return std::nullopt;
    }

    // What the system knows of a wait it tells once the thread runs again: while one can run, only running counts.
    void add_used_time() {
        const Clock::time_point now = Clock::now();
        if (now < looked_ + glance) return;
        auto activity = child_.activity();
        bool is_runnable = false;
        std::chrono::nanoseconds ran{0}, waited{0};
        for (const auto& [thread, does] : activity) {
            const ThreadActivity before = activity_[thread];
            is_runnable = is_runnable || does.is_runnable;
            ran = std::max(ran, does.ran - before.ran);
            waited = std::max(waited, does.waited - before.waited);
        }
        const auto passed = std::min<std::chrono::nanoseconds>(now - looked_, longest_look);
        used_ += is_runnable ? ran : std::max(passed - waited, passed * 0);
        activity_ = std::move(activity);
        looked_ = now;
    }

    void hear() {
        std::array<char, 4096> bytes;
        const ssize_t count = ::read(report_, bytes.data(), bytes.size());
        if (count < 0 && errno == EINTR) return;
        if (count <= 0) {
            report_ = -1;
            return;
        }
        is_false_ = !listener_.hear({bytes.data(), static_cast<std::size_t>(count)}) || is_false_;
        used_at_line_ = used_;
    }

    void read_output() {
        std::array<char, 4096> bytes;
        const ssize_t count = ::read(output_, bytes.data(), bytes.size());
        if (count < 0 && errno == EINTR) return;
        if (count <= 0)
            output_ = -1;
        else
            printed_.append(bytes.data(), std::min(static_cast<std::size_t>(count), most_printed - printed_.size()));
    }

    // What the child wrote before it ended. Processes that it started may hold the other ends open.
    void read_the_rest() {
        while (report_ >= 0 && !is_false_ && has_more(report_)) hear();
        while (output_ >= 0 && printed_.size() < most_printed && has_more(output_)) read_output();
    }

    Child& child_;
    int report_, output_;  // -1 when they have ended
    Listener& listener_;
    const ChildLimits& limits_;
    Clock::time_point looked_ = Clock::now();
    std::map<pid_t, ThreadActivity> activity_;            // at the last look
    std::chrono::nanoseconds used_{0}, used_at_line_{0};  // of its own time
    std::string printed_;
    bool is_false_ = false;
};

// The key of a report, sent before the child starts: it waits in the socket.
ReportKey send_key(int descriptor) {
    const ReportKey key = random_report_key();
    if (::write(descriptor, &key, sizeof key) != static_cast<ssize_t>(sizeof key))
        throw std::system_error(errno, std::generic_category(), "no report of a child process");
    return key;
}

}  // namespace

Stopped watch(Child& child, int report, Listener& listener, const ChildLimits& limits) {
    return ChildWatch(child, report, -1, listener, limits).run();
}

WatchedEnd run_watched(const std::string& program, const std::vector<std::string>& words, int file, Listener::Take take,
                       const ChildLimits& limits) {
    Pair report(Pair::Kind::socket);
    Pair output(Pair::Kind::pipe);
    Listener listener(std::move(take), send_key(report.ours()));
    Child child(program, words, {report.theirs(), file}, output.theirs());
    report.close_theirs();
    output.close_theirs();
    ChildWatch child_watch(child, report.ours(), output.ours(), listener, limits);
    const Stopped stopped = child_watch.run();
    return {stopped, child.finish(), child_watch.printed()};
}

}  // namespace flutebook::sandbox
