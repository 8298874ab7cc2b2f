// What a child tells the process that started it, and how that process waits for it.
//
// A child writes one line after another through a pipe, each before the step that it names begins: the last line says
// where it died. The parent kills a child that takes too long or too much memory.
#pragma once

#include <chrono>
#include <cstddef>
#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "host/sandbox/child.hpp"

namespace flutebook::sandbox {

/// The child's end of the pipe. A line that cannot be written is dropped: the parent no longer reads.
class ChildReport {
public:
    explicit ChildReport(int descriptor) : descriptor_(descriptor) {}

    /// Writes `word` and `text` as one line; control characters become spaces.
    void say(std::string_view word, std::string_view text = {}) const;

    /// Writes a measured value; the name is one word.
    void say_figure(std::string_view name, double value) const;

private:
    int descriptor_;
};

/// One line of a report.
struct ChildMessage {
    std::string word, text;
};

/// Splits the bytes of the pipe into lines.
class Listener {
public:
    explicit Listener(std::function<void(const ChildMessage&)> take) : take_(std::move(take)) {}

    void hear(std::string_view bytes);

private:
    std::function<void(const ChildMessage&)> take_;
    std::string line_;
};

struct Limits {
    std::chrono::milliseconds whole;    // from start to end
    std::chrono::milliseconds silence;  // from one line to the next
    std::size_t resident_bytes;
};

enum class Stopped { by_itself, out_of_time, out_of_memory };

/// Passes the report to the listener until the child ends or is killed. When this returns, the child and every process
/// that it started have ended. Closes no descriptor.
[[nodiscard]] Stopped watch(Child& child, int report, Listener& listener, const Limits& limits);

/// How a watched child ended.
struct WatchedEnd {
    Stopped stopped;
    Ended ended;
};

/// Starts `program` with the arguments `words` and watches it. In the child, descriptor 3 is the report's pipe and 4 is
/// `file`. Throws std::system_error where it cannot be started.
[[nodiscard]] WatchedEnd run_watched(const std::string& program, const std::vector<std::string>& words, int file,
                                     Listener& listener, const Limits& limits);

}  // namespace flutebook::sandbox
