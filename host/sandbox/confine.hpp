// Limits what a child may do to what models need: no other processes, no written files, no network, limited memory.
#pragma once

#include <chrono>

namespace flutebook::sandbox {

/// Limits memory, written files, open descriptors and core dumps of this process. Memory is not limited under
/// AddressSanitizer, which reserves more address space than the limit.
void limit_resources();

/// Descriptors of a process under limit_resources() have numbers below this.
inline constexpr int most_descriptors = 256;

/// Limits the processor time of this process, for a child with one task. A child that lives as long as the host has a
/// deadline for each task instead.
void limit_processor_time(std::chrono::seconds most);

/// Allows only the system calls of a list: reading, memory, threads, waiting, clocks. Any other call (one that starts a
/// process, changes a file or its attributes, opens a connection, reaches another process or a terminal, or is unknown)
/// raises SIGSYS in its caller. Files can be opened in the folders of libraries only, where the system can tell;
/// nothing of another process can be read. The filter holds for this thread and all threads that it starts, and cannot
/// be removed. Where the system has no such filter, only the limits and the session protect the host.
void forbid_calls();

/// After forbid_calls(), and after the last file has been opened: opening or reading a file raises SIGSYS as well.
void forbid_files();

/// What a call that is not on the list does: "starts a process". Safe in a signal handler.
[[nodiscard]] const char* meaning_of(int system_call);

}  // namespace flutebook::sandbox
