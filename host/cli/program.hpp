// The program as a whole: what is asked, done, and said.
#pragma once

namespace flutebook::cli {

/// The process's exit code. Throws InputError and ModelError where the plant or its plugins are not fit to start with.
[[nodiscard]] int run(int count, const char* const* words);

}  // namespace flutebook::cli
