// The processes that a test has started, directly or not, to check that they have ended.
#pragma once

#include <sys/types.h>

#include <string>
#include <vector>

namespace flutebook::check {

/// How a crash inside a plugin ends the child. AddressSanitizer catches the signal and ends the process itself.
#if defined(FLUTEBOOK_SANITIZED)
inline constexpr const char* crashed = "ended the process with code 1 while it evaluated";
#else
inline constexpr const char* crashed = "crashed (SIGSEGV) while evaluating generated order ";
#endif

/// The processes with this word on their command line that this process started, directly or not. Without zombies.
[[nodiscard]] std::vector<pid_t> running(const std::string& word);

/// Whether there is such a process.
[[nodiscard]] bool is_running(const std::string& word);

/// The same, after waiting a few seconds for its end.
[[nodiscard]] bool is_still_running(const std::string& word);

/// The path of a plugin that was built for these tests.
[[nodiscard]] inline std::string plugin(const std::string& name) {
    return std::string(FLUTEBOOK_CHECK_PLUGINS) + "/" + name + ".so";
}

}  // namespace flutebook::check
