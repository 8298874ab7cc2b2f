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

/// The child's end of the pipe. A line that cannot be written is lost: the parent no longer reads.
class ChildReport {
public:
    explicit ChildReport(int descriptor) : descriptor_(descriptor) {}

    /// `word` and then what belongs to it, which is made one line of.
    void say(std::string_view word, std::string_view text = {}) const;

    /// Something measured; the name is one word.
    void say_figure(std::string_view name, double value) const;

private:
    int descriptor_;
};

/// One line as it was said.
struct ChildMessage {
    std::string word, text;
};

/// Cuts what comes through the pipe into lines.
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
