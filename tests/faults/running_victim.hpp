// The victim as a process of its own, to be killed.
#pragma once

#include <sys/types.h>

#include <chrono>
#include <string>
#include <vector>

namespace flutebook::fixture {

/// How it ended, and what it had said until then.
struct VictimEnd {
    int exit_code;  // -1 where a signal ended it
    int signal;     // 0 where none did
    int done;       // how many things it acknowledged
    std::string errors;
};

/// Killed, if nobody waited for its end.
class RunningVictim {
public:
    /// Starts it. Throws std::runtime_error where that fails.
    explicit RunningVictim(const std::vector<std::string>& words);
    RunningVictim(const RunningVictim&) = delete;
    RunningVictim& operator=(const RunningVictim&) = delete;
    ~RunningVictim();

    /// Waits until it has said so much: `begun` is one line, every `done` is one.
    void wait_for_lines(std::size_t count);
    void kill_now();
    /// Waits for its end.
    VictimEnd end();

    [[nodiscard]] pid_t number() const { return number_; }

private:
    bool read_more();

    pid_t number_ = -1;
    int said_ = -1, errors_ = -1;
    std::string text_;
};

/// Runs it to its end.
VictimEnd run_victim(const std::vector<std::string>& words);

}  // namespace flutebook::fixture
