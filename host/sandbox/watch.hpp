// Waits for a child that reports, and kills it where it takes too long or too much memory.
#pragma once

#include <chrono>
#include <cstddef>
#include <string>
#include <vector>

#include "host/sandbox/child.hpp"
#include "host/sandbox/report.hpp"

namespace flutebook::sandbox {

struct Limits {
    std::chrono::milliseconds whole;    // from start to end
    std::chrono::milliseconds silence;  // from one line to the next
    std::size_t resident_bytes;
};

enum class Stopped { by_itself, out_of_time, out_of_memory };

/// Passes the report to the listener until the child ends or is killed. When this returns, the child and all that it
/// started are gone and waited for. Closes nothing.
[[nodiscard]] Stopped watch(Child& child, int report, Listener& listener, const Limits& limits);

/// How a watched child ended.
struct WatchedEnd {
    Stopped stopped;
    Ended ended;
};

/// Starts `program` with `words` as a child, which finds where to report as descriptor 3 and `file` as 4, and watches
/// it. Throws std::system_error where it cannot be started.
[[nodiscard]] WatchedEnd run_watched(const std::string& program, const std::vector<std::string>& words, int file,
                                     Listener& listener, const Limits& limits);

}  // namespace flutebook::sandbox
