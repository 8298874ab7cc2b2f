// How far long work has come, for somebody who sits and waits. Says nothing about work that is over soon, and nothing
// to anybody but a person at a terminal.
#pragma once

#include <chrono>
#include <cstddef>
#include <optional>
#include <string>

namespace flutebook::cli {

/// When to say what; where it is shown is the caller's. One thread at a time.
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
