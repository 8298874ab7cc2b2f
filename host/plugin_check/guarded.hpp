// Signals that code which is not ours raises: told to whoever listens, instead of suffered in silence. For children
// alone: whatever the code held when it was struck stays as it was.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>

namespace flutebook::plugin_check {

/// The signals of a program that goes wrong are caught from now on. Outside guarded() one is reported to this
/// descriptor, as the word `died` with the rule that it breaks and what was being done, and ends the process: nothing
/// that the struck code may hold, memory's own lock among it, is touched any more.
void catch_signals(int report);

/// Says what this thread is doing, as it goes on after "while": "evaluating made order 3". One at a time.
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

/// Runs the work; where it touches memory that it must not, stops it there and tells the address. For code that holds
/// nothing. Exceptions pass through.
[[nodiscard]] std::optional<std::uintptr_t> guarded(const std::function<void()>& work);

}  // namespace flutebook::plugin_check
