// Reports the signals that code under test raises, before the process ends. For child processes only: locks and memory
// that the code held at the signal stay as they were.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>

#include "host/sandbox/report.hpp"

namespace flutebook::sandbox {

/// The first word of a report on a signal; both are constant texts.
struct SignalWords {
    const char* crash;      // of a signal that faulty code raises
    const char* forbidden;  // of a call that the filter forbids, or a file that would grow
};

/// Catches the signals of faulty code. Outside guarded() a signal is reported as `died`, one of the words, what
/// happened and the current task, and ends the process. The report uses nothing that the interrupted code may have
/// locked, such as the allocator. `report` must live until the process ends.
void catch_signals(const ChildReport& report, SignalWords words);

/// Names what this thread is doing, as it follows "while": "evaluating generated order 3". One at a time.
class CurrentTask {
public:
    /// `text` must outlive this object.
    explicit CurrentTask(const std::string& what);
    ~CurrentTask();
    CurrentTask(const CurrentTask&) = delete;
    CurrentTask& operator=(const CurrentTask&) = delete;

private:
    const char* before_;
};

/// Runs the work. If it accesses memory that it must not, stops it and returns the address. For code without locks or
/// destructors. Exceptions pass through.
[[nodiscard]] std::optional<std::uintptr_t> guarded(const std::function<void()>& work);

}  // namespace flutebook::sandbox
