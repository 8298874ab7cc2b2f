// Which processes a test has started, and what they started in turn: whether what was to be gone is gone.
#pragma once

#include <sys/types.h>

#include <string>
#include <vector>

namespace flutebook::check {

/// How a crash inside a plugin ends the child. AddressSanitizer catches the signal and ends the process itself.
#if defined(__SANITIZE_ADDRESS__)
inline constexpr const char* crashed = "ended the process with code 1 while it evaluated";
#else
inline constexpr const char* crashed = "crashed (SIGSEGV) while evaluating made order ";
#endif

/// Of all that this process started, and what that started in turn, those with this word on their command line. Not
/// those that only wait to be waited for.
[[nodiscard]] std::vector<pid_t> running(const std::string& word);

/// Whether there is any.
[[nodiscard]] bool is_running(const std::string& word);

/// The same, after it had a few seconds to end.
[[nodiscard]] bool is_still_running(const std::string& word);

/// A plugin that was built for the tests here.
[[nodiscard]] inline std::string plugin(const std::string& name) {
    return std::string(FLUTEBOOK_CHECK_PLUGINS) + "/" + name + ".so";
}

}  // namespace flutebook::check
