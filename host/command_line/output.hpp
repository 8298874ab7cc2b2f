// What the program writes: the answer on standard output, complaints and progress on standard error, and its exit code.
//
// A reader that closes its end does not end the program: SIGPIPE is ignored and the result of every write is checked.
#pragma once

#include <algorithm>
#include <chrono>
#include <cstddef>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "host/base/place.hpp"

namespace flutebook::cli {

/// Where several things went wrong in one run, the highest is returned.
enum class ExitCode {
    done = 0,
    refused = 1,  // a bad request, a quantity that cannot be made, an answer that could not be written
    misused = 2,  // wrong usage
    unfit = 3,    // the plant's files or a plugin cannot be used
};

[[nodiscard]] inline ExitCode worse(ExitCode left, ExitCode right) {
    return std::max(left, right);
}

/// To be called before any file is opened. Ignores SIGPIPE, and opens /dev/null for each standard stream that the
/// caller closed, so that no other file gets its number.
void prepare_streams();

/// Standard output. Not thread-safe.
class Output {
public:
    /// Writes at once. Does nothing after a write that failed.
    void write(const std::string& text);

    /// Something was done that stays done, whatever becomes of the answer: "closed 2026-10 with entry 7; head HEX".
    /// Told on standard error where the next write fails, so that its number and head are not lost with the answer.
    void acknowledge(std::string deed) { deeds_.push_back(std::move(deed)); }

    /// False after a write that failed.
    [[nodiscard]] bool is_open() const { return is_open_; }

    /// `refused` where not everything could be written. The reason goes to standard error, with what was done all the
    /// same; nothing does where the reader closed its end and nothing was done.
    [[nodiscard]] ExitCode close();

private:
    bool is_open_ = true;
    int reason_ = 0;  // errno of the failure
    std::vector<std::string> deeds_;
};

/// Writes each message on a line of standard error, without control characters. Never fails.
void complain(const std::vector<std::string>& lines);

/// The same for what is doubtful and stops nothing: `warning: WHERE: TEXT`.
void warn(const std::vector<base::Warning>& warnings);

[[nodiscard]] bool is_terminal_output();
/// Columns for text on standard output: what COLUMNS says, else what the terminal has, from 60 up to the usual page.
[[nodiscard]] std::size_t text_columns();
[[nodiscard]] bool is_terminal_error();

/// Replaces the progress line on the terminal; an empty text removes it.
void show_progress(const std::string& line);

/// The progress of a long run over requests: decides when to show which line. The caller shows it. Not thread-safe.
class Progress {
public:
    using Clock = std::chrono::steady_clock;

    Progress(std::size_t all, Clock::time_point begun) : all_(all), begun_(begun), last_(begun) {}

    /// The line to show after `done` requests, if one is due: the first after two seconds, then up to four a second.
    [[nodiscard]] std::optional<std::string> line(std::size_t done, Clock::time_point now);

    /// The same of a list whose length is not known: after `done` items, which were this share of it.
    [[nodiscard]] std::optional<std::string> share_line(std::size_t done, double share, Clock::time_point now);

    [[nodiscard]] bool was_shown() const { return was_shown_; }

private:
    [[nodiscard]] bool is_due(Clock::time_point now);
    /// ", about 12 s left" after a share of the work.
    [[nodiscard]] std::string time_left(double share, Clock::time_point now) const;

    std::size_t all_;
    Clock::time_point begun_, last_;
    bool was_shown_ = false;
};

}  // namespace flutebook::cli
