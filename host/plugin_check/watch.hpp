// Waits for a child that reports, and puts an end to it where it takes too long or too much.
#pragma once

#include <chrono>
#include <cstddef>
#include <string>
#include <vector>

#include "host/sandbox/child.hpp"
#include "host/sandbox/report.hpp"

namespace flutebook::plugin_check {

struct Limits {
    std::chrono::milliseconds whole;    // from start to end
    std::chrono::milliseconds silence;  // from one line to the next
    std::size_t resident_bytes;
};

enum class Stopped { by_itself, out_of_time, out_of_memory };

/// Hears the child out until it ends or is killed; either way it is gone when this returns, with all it started, and
/// waited for. Closes nothing.
[[nodiscard]] Stopped watch(sandbox::Child& child, int report, sandbox::Listener& listener, const Limits& limits);

/// How a watched child ended.
struct WatchedEnd {
    Stopped stopped;
    sandbox::Ended ended;
};

/// Starts `program` with `words` as a child, which finds where to report as descriptor 3 and `file` as 4, and hears it
/// out. Throws std::system_error where it cannot be started.
[[nodiscard]] WatchedEnd hear_out(const std::string& program, const std::vector<std::string>& words, int file,
                                  sandbox::Listener& listener, const Limits& limits);

}  // namespace flutebook::plugin_check
