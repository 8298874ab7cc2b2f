// How a process waits for a child that it started: it reads the child's report, and kills the child when it takes too
// long or too much memory, or when its report is none.
#pragma once

#include <chrono>
#include <cstddef>
#include <string>
#include <vector>

#include "host/sandbox/child.hpp"
#include "host/sandbox/report.hpp"

namespace flutebook::sandbox {

/// Times are the child's own: while one of its threads can run, the time that the busiest of them ran; else the time
/// that passed, less what a thread waited for a processor that others used. So a child that waits is not stopped for
/// it, and a child that hangs is, whether it runs or sleeps. Threads that take the processor from one another are
/// stopped by limit_processor_time().
struct ChildLimits {
    std::chrono::milliseconds whole;    // from start to end
    std::chrono::milliseconds silence;  // from one line to the next
    std::size_t resident_bytes;
};

enum class Stopped { by_itself, out_of_time, out_of_memory, false_report };

/// Passes the report to the listener until the child ends or is killed. When this returns, the child and every process
/// that it started have ended. Closes no descriptor.
[[nodiscard]] Stopped watch(Child& child, int report, Listener& listener, const ChildLimits& limits);

/// How a watched child ended.
struct WatchedEnd {
    Stopped stopped;
    Ended ended;
    std::string printed;  // the first bytes that it wrote to its standard output and error
};

/// Starts `program` with the arguments `words` and watches it. In the child, descriptor 3 is for a ChildReport and 4 is
/// `file`; each line that passes is given to `take`. Throws std::system_error where it cannot be started.
[[nodiscard]] WatchedEnd run_watched(const std::string& program, const std::vector<std::string>& words, int file,
                                     Listener::Take take, const ChildLimits& limits);

}  // namespace flutebook::sandbox
