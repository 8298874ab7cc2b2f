// A child process, usually of the host's own program. It receives arguments and descriptors; it is killed with every
// process that it started, and is always waited for.
//
// A child has its own session and process group, no input, no terminal, and no output but the descriptors that it
// receives. It is killed when its Child goes out of scope, and ends by itself when the process that started it has
// ended.
#pragma once

#include <sys/types.h>

#include <chrono>
#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace flutebook::sandbox {

/// How a process ended: with an exit code, or by a signal (then `signal` is not 0).
struct Ended {
    int code, signal;
};

/// A thread of a child: whether it runs or could, for how long it has run, and for how long it could have run and
/// waited for a processor that others used.
struct ThreadActivity {
    bool is_runnable;
    std::chrono::nanoseconds ran, waited;
};

/// One thread at a time.
class Child {
public:
    /// Starts `program` with the arguments `words`. In the child, `descriptors` have the numbers 3, 4 and so on; its
    /// standard output and error go to `output`, or nowhere. Throws std::system_error where it cannot be started.
    Child(const std::string& program, const std::vector<std::string>& words, const std::vector<int>& descriptors,
          std::optional<int> output = std::nullopt);
    ~Child();
    Child(const Child&) = delete;
    Child& operator=(const Child&) = delete;

    /// No other process gets this number before the Child goes out of scope.
    [[nodiscard]] pid_t id() const { return id_; }

    /// Becomes readable when the child ends. The Child keeps ownership.
    [[nodiscard]] int end_descriptor() const { return end_; }

    /// The memory that the child uses now.
    [[nodiscard]] std::size_t resident_bytes() const;

    /// What each of its threads does, by the thread's number. Empty where unknown, or when the child has ended.
    [[nodiscard]] std::map<pid_t, ThreadActivity> activity() const;

    /// How the child ended by itself; nothing while it runs.
    [[nodiscard]] std::optional<Ended> ended() const;

    /// Kills every process of the group that still runs, and waits. Returns how the child ended: by this kill, if it
    /// had not ended before. A second call returns the same.
    Ended finish();

private:
    pid_t id_ = -1;
    int end_ = -1;
    int life_ = -1;  // open while this process lives; the child ends when it is closed
    std::optional<Ended> finished_;
};

/// The path of the running program.
[[nodiscard]] std::string own_program();

/// To be called in a child: it then ends as soon as the process that started it has ended. Starts a thread.
void end_with_parent();

/// "crashed (SIGSEGV)", "ended its process with code 0"
[[nodiscard]] std::string ending(const Ended& ended);

/// "SIGSEGV"
[[nodiscard]] std::string signal_name(int signal);

}  // namespace flutebook::sandbox
