#include "host/sandbox/watch.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <poll.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <system_error>

namespace flutebook::sandbox {
namespace {

using Clock = std::chrono::steady_clock;

// Longer than any message: a faulty child must not fill the memory of this process.
constexpr std::size_t longest_line = 4000;

// How often the child's memory is checked; a child allocates no more than some MB in this time.
constexpr std::chrono::milliseconds glance{10};

// False at the end of the report.
bool hear(int report, Listener& listener) {
    std::array<char, 4096> bytes;
    const ssize_t count = ::read(report, bytes.data(), bytes.size());
    if (count < 0) return errno == EINTR;
    listener.hear({bytes.data(), static_cast<std::size_t>(count)});
    return count > 0;
}

bool has_more(int report) {
    pollfd one{report, POLLIN, 0};
    return ::poll(&one, 1, 0) > 0 && (one.revents & POLLIN) != 0;
}

class Pipe {
public:
    Pipe() {
        if (::pipe2(ends_.data(), O_CLOEXEC) != 0)
            throw std::system_error(errno, std::generic_category(), "no pipe for the report of a child process");
    }
    ~Pipe() {
        ::close(ends_[0]);
        close_writing();
    }
    Pipe(const Pipe&) = delete;
    Pipe& operator=(const Pipe&) = delete;
    [[nodiscard]] int reading() const { return ends_[0]; }
    [[nodiscard]] int writing() const { return ends_[1]; }
    void close_writing() {
        if (ends_[1] >= 0) ::close(ends_[1]);
        ends_[1] = -1;
    }

private:
    std::array<int, 2> ends_{};
};

}  // namespace

void ChildReport::say(std::string_view word, std::string_view text) const {
    std::string line(word);
    if (!text.empty()) line.append(" ").append(text.substr(0, longest_line - word.size() - 2));
    std::replace_if(
        line.begin(), line.end(), [](char sign) { return static_cast<unsigned char>(sign) < ' '; }, ' ');
    line += '\n';
    std::size_t done = 0;
    while (done < line.size()) {
        const ssize_t more = ::write(descriptor_, line.data() + done, line.size() - done);
        if (more < 0 && errno == EINTR) continue;
        if (more < 0) return;
        done += static_cast<std::size_t>(more);
    }
}

void ChildReport::say_figure(std::string_view name, double value) const {
    say("figure", fmt::format("{} {}", name, value));
}

void Listener::hear(std::string_view bytes) {
    for (const char sign : bytes) {
        if (sign != '\n') {
            if (line_.size() < longest_line) line_ += sign;
            continue;
        }
        const std::size_t word = std::min(line_.find(' '), line_.size());
        take_({line_.substr(0, word), word < line_.size() ? line_.substr(word + 1) : ""});
        line_.clear();
    }
}

Stopped watch(Child& child, int report, Listener& listener, const Limits& limits) {
    const Clock::time_point begun = Clock::now();
    Clock::time_point last_line = begun;
    bool listens = true;
    while (true) {
        const Clock::time_point deadline = std::min(begun + limits.whole, last_line + limits.silence);
        const auto left = std::chrono::duration_cast<std::chrono::milliseconds>(deadline - Clock::now());
        std::array<pollfd, 2> both = {pollfd{child.end_descriptor(), POLLIN, 0},
                                      pollfd{listens ? report : -1, POLLIN, 0}};
        const int ready =
            ::poll(both.data(), both.size(), static_cast<int>(std::clamp(left, left * 0, glance).count()));
        if (ready > 0 && both[1].revents != 0) {
            listens = hear(report, listener);
            last_line = Clock::now();
        } else if (ready > 0 && both[0].revents != 0) {
            break;
        }
        if (child.resident_bytes() > limits.resident_bytes && !child.ended()) {
            child.finish();
            return Stopped::out_of_memory;
        }
        if (Clock::now() >= deadline && !child.ended()) {
            child.finish();
            return Stopped::out_of_time;
        }
    }
    while (listens && has_more(report)) listens = hear(report, listener);
    child.finish();
    return Stopped::by_itself;
}

WatchedEnd run_watched(const std::string& program, const std::vector<std::string>& words, int file, Listener& listener,
                       const Limits& limits) {
    Pipe report;
    Child child(program, words, {report.writing(), file});
    report.close_writing();
    const Stopped stopped = watch(child, report.reading(), listener, limits);
    return {stopped, child.finish()};
}

}  // namespace flutebook::sandbox
