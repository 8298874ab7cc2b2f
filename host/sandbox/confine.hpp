// Takes from a child what a model never needs: other processes, files to write, the network, memory without end.
#pragma once

#include <chrono>

namespace flutebook::sandbox {

/// Limits on memory, written files and core dumps, which the system itself enforces. Memory is not limited under
/// AddressSanitizer, which reserves more than there is.
void limit_resources();

/// From its start to its end. For a child that works once; one that works for as long as the host does has deadlines.
void limit_processor_time(std::chrono::seconds most);

/// From now on only the system calls of a list are made: reading, memory, threads, waiting, clocks. Any other call (one
/// that starts a process, changes the file system, opens a connection, reaches another process, or is simply unknown)
/// raises SIGSYS in its caller. For this thread and all that it starts, for good. Where the system has no such filter,
/// limits and the process group have to do.
void forbid_calls();

/// What a call that is not on the list was about: "starts a process". Safe in a signal handler.
[[nodiscard]] const char* meaning_of(int system_call);

}  // namespace flutebook::sandbox
