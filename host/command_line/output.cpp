#include "host/command_line/output.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/ioctl.h>
#include <unistd.h>

#include <cerrno>
#include <csignal>
#include <cstdlib>
#include <string_view>
#include <system_error>

#include "host/render/text.hpp"

namespace flutebook::cli {

namespace {

// 0, or the errno that stopped it.
int write_whole(int stream, std::string_view text) {
    while (!text.empty()) {
        const ssize_t written = ::write(stream, text.data(), text.size());
        if (written < 0 && errno == EINTR) continue;
        if (written < 0) return errno;
        text.remove_prefix(static_cast<std::size_t>(written));
    }
    return 0;
}

}  // namespace

void prepare_streams() {
    std::signal(SIGPIPE, SIG_IGN);
    // Opened for reading only, so that a write still fails as it does on a closed stream.
    for (const int stream : {STDIN_FILENO, STDOUT_FILENO, STDERR_FILENO})
        if (::fcntl(stream, F_GETFD) < 0 && errno == EBADF && ::open("/dev/null", O_RDONLY) < 0) return;
}

void Output::write(const std::string& text) {
    if (!is_open_) return;
    reason_ = write_whole(STDOUT_FILENO, text);
    is_open_ = reason_ == 0;
    if (is_open_) deeds_.clear();
}

ExitCode Output::close() {
    if (is_open_) return ExitCode::done;
    std::vector<std::string> lines;
    if (reason_ != EPIPE || !deeds_.empty())
        lines.push_back(
            fmt::format("standard output: cannot be written: {}; {}", std::generic_category().message(reason_),
                        deeds_.empty() ? "send the answer elsewhere" : "the command itself was carried out"));
    for (const std::string& deed : deeds_) lines.push_back("done and kept: " + deed);
    complain(lines);
    return ExitCode::refused;
}

void complain(const std::vector<std::string>& lines) {
    std::string text;
    for (const std::string& line : lines) text += render::cleaned(line) + "\n";
    static_cast<void>(write_whole(STDERR_FILENO, text));
}

void warn(const std::vector<base::Warning>& warnings) {
    for (const base::Warning& warning : warnings) complain({fmt::format("warning: {}: {}", warning.at, warning.text)});
}

bool is_terminal_output() {
    return ::isatty(STDOUT_FILENO) == 1;
}

std::size_t text_columns() {
    constexpr long least = 60;
    const long most = render::page_width;
    const char* given = std::getenv("COLUMNS");
    long columns = given == nullptr ? 0 : std::strtol(given, nullptr, 10);
    winsize size{};
    if (columns <= 0 && is_terminal_output() && ::ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) == 0) columns = size.ws_col;
    return static_cast<std::size_t>(columns <= 0 ? most : std::clamp(columns, least, most));
}

bool is_terminal_error() {
    return ::isatty(STDERR_FILENO) == 1;
}

void show_progress(const std::string& line) {
    static_cast<void>(write_whole(STDERR_FILENO, "\r" + line + "\x1b[K"));
}

bool Progress::is_due(Clock::time_point now) {
    using namespace std::chrono_literals;
    if (now - begun_ < 2s || now - last_ < 250ms) return false;
    last_ = now;
    was_shown_ = true;
    return true;
}

std::string Progress::time_left(double share, Clock::time_point now) const {
    if (!(share > 0)) return "";
    const double spent = std::chrono::duration<double>(now - begun_).count();
    const double left = spent * (1 - share) / share;
    return left < 90 ? fmt::format(", about {:.0f} s left", left) : fmt::format(", about {:.0f} min left", left / 60);
}

std::optional<std::string> Progress::line(std::size_t done, Clock::time_point now) {
    if (done >= all_ || !is_due(now)) return std::nullopt;
    const double share = static_cast<double>(done) / static_cast<double>(all_);
    return fmt::format("{} of {} requests costed{}", done, all_, time_left(share, now));
}

std::optional<std::string> Progress::share_line(std::size_t done, double share, Clock::time_point now) {
    if (!is_due(now)) return std::nullopt;
    return fmt::format("{} items costed, {:.0f} % of the list{}", done, share * 100, time_left(share, now));
}

}  // namespace flutebook::cli
