// The host's own program as a process apart: given a word and some descriptors, watched while it works, killed with
// everything it started, and always waited for.
//
// A child has a process group of its own, no input, nowhere to write but what it was handed, and no terminal. It is
// killed when its Child goes out of scope, and ends by itself when the process that started it is gone.
#pragma once

#include <sys/types.h>

#include <chrono>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace flutebook::sandbox {

/// How it ended: with a code, or by a signal (then not 0).
struct Ended {
    int code, signal;
};

/// One thread at a time.
class Child {
public:
    /// Starts `program` with `words`; it finds `descriptors` as 3, 4 and so on, whatever their numbers are here.
    /// Throws std::system_error where it cannot be started.
    Child(const std::string& program, const std::vector<std::string>& words, const std::vector<int>& descriptors);
    ~Child();
    Child(const Child&) = delete;
    Child& operator=(const Child&) = delete;

    /// Its own until this goes out of scope, whether it works or has ended.
    [[nodiscard]] pid_t id() const { return id_; }

    /// Becomes readable when the child ends. Lent.
    [[nodiscard]] int end_descriptor() const { return end_; }

    /// Bytes of memory that it holds at present.
    [[nodiscard]] std::size_t resident_bytes() const;

    /// How it ended by itself; nothing while it works.
    [[nodiscard]] std::optional<Ended> ended() const;

    /// Kills whatever is left of the group, and waits. How it ended: by this, if it had not ended by itself. The
    /// second time it says the same.
    Ended finish();

private:
    pid_t id_ = -1;
    int end_ = -1;
    int life_ = -1;  // held open as long as this process lives: the child ends when it is closed
    std::optional<Ended> finished_;
};

/// The running program.
[[nodiscard]] std::string own_program();

/// In a child: from now on it ends as soon as the process that started it is gone. Starts a thread.
void end_with_parent();

/// "crashed (SIGSEGV)", "ended its process with code 0"
[[nodiscard]] std::string ending(const Ended& ended);

/// "SIGSEGV"
[[nodiscard]] std::string signal_name(int signal);

}  // namespace flutebook::sandbox
