// What the program writes: the answer on standard output, complaints and progress on standard error, and its exit code.
//
// A reader that goes away is not a crash: SIGPIPE is ignored and every write is looked at.
#pragma once

#include <algorithm>
#include <chrono>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace flutebook::cli {

/// The higher one wins where several things went wrong in one run.
enum class ExitCode {
    done = 0,
    refused = 1,  // a bad request, a quantity that nothing can make, an answer that could not be written
    misused = 2,  // wrong usage
    unfit = 3,    // the plant's files or a plugin
};

[[nodiscard]] inline ExitCode worse(ExitCode left, ExitCode right) {
    return std::max(left, right);
}

/// Before anything else is opened: SIGPIPE is ignored, and a standard stream that the caller closed is occupied, so
/// that no file of ours takes its number.
void prepare_streams();

/// The answer. One thread at a time.
class Output {
public:
    /// Written at once. After the first failure nothing more is tried.
    void write(const std::string& text);

    /// False once a write failed: no later write is tried.
    [[nodiscard]] bool is_open() const { return is_open_; }

    /// `refused` where not all could be written. Why is said on standard error, unless the reader simply left.
    [[nodiscard]] ExitCode close();

private:
    bool is_open_ = true;
    int reason_ = 0;  // errno of the failure
};

/// One finished sentence a line, each cleaned of control characters. Never fails.
void complain(const std::vector<std::string>& lines);

[[nodiscard]] bool is_terminal_output();
[[nodiscard]] bool is_terminal_error();

/// The line on a terminal's standard error that is overwritten while work goes on; empty takes it away.
void show_progress(const std::string& line);

/// How many requests of a long run are costed: when to show a line about it, and which. The caller shows the line. One
/// thread at a time.
class Progress {
public:
    using Clock = std::chrono::steady_clock;

    Progress(std::size_t all, Clock::time_point begun) : all_(all), begun_(begun), last_(begun) {}

    /// After `done` of all: the line to show, if it is time for one: two seconds after the beginning, then four times
    /// a second.
    [[nodiscard]] std::optional<std::string> line(std::size_t done, Clock::time_point now);

    [[nodiscard]] bool was_shown() const { return was_shown_; }

private:
    std::size_t all_;
    Clock::time_point begun_, last_;
    bool was_shown_ = false;
};

}  // namespace flutebook::cli
