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

/// Time in which the child waited for a processor that other processes used does not count: on a busy machine a good
/// child needs no less work, and a child that hangs waits for nothing.
struct Limits {
    std::chrono::milliseconds whole;    // from start to end
    std::chrono::milliseconds silence;  // from one line to the next
    std::size_t resident_bytes;
};

enum class Stopped { by_itself, out_of_time, out_of_memory, false_report };

/// Passes the report to the listener until the child ends or is killed. When this returns, the child and every process
/// that it started have ended. Closes no descriptor.
[[nodiscard]] Stopped watch(Child& child, int report, Listener& listener, const Limits& limits);

/// How a watched child ended.
struct WatchedEnd {
    Stopped stopped;
    Ended ended;
    std::string printed;  // the first bytes that it wrote to its standard output and error
};

/// Starts `program` with the arguments `words` and watches it. In the child, descriptor 3 is for a ChildReport and 4 is
/// `file`; each line that passes is given to `take`. Throws std::system_error where it cannot be started.
[[nodiscard]] WatchedEnd run_watched(const std::string& program, const std::vector<std::string>& words, int file,
                                     Listener::Take take, const Limits& limits);

}  // namespace flutebook::sandbox
