// Limits what a child may do to what models need: no other processes, no written files, no network, limited memory.
#pragma once

#include <chrono>

namespace flutebook::sandbox {

/// Limits memory, written files and core dumps of this process. Memory is not limited under AddressSanitizer, which
/// reserves more address space than the limit.
void limit_resources();

/// Limits the processor time of this process, for a child with one task. A child that lives as long as the host has a
/// deadline for each task instead.
void limit_processor_time(std::chrono::seconds most);

/// Allows only the system calls of a list: reading, memory, threads, waiting, clocks. Any other call (one that starts a
/// process, changes the file system, opens a connection, reaches another process, or is unknown) raises SIGSYS in its
/// caller. The filter holds for this thread and all threads that it starts, and cannot be removed. Where the system has
/// no such filter, only the limits and the process group protect the host.
void forbid_calls();

/// What a call that is not on the list does: "starts a process". Safe in a signal handler.
[[nodiscard]] const char* meaning_of(int system_call);

}  // namespace flutebook::sandbox
