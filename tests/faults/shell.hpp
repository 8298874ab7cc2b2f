// The database's own shell, as anybody who can read the file may run it.
#pragma once

#include <string>
#include <vector>

namespace flutebook::fixture {

struct ShellAnswer {
    int exit_code;
    std::string output, errors;
};

[[nodiscard]] ShellAnswer run_shell_words(const std::string& file, const std::vector<std::string>& words);

/// Runs SQL, and commands of the shell itself, on a file; answers with rows of columns that stand apart by `|`. Throws
/// std::runtime_error where there is no shell.
template <typename... Words>
[[nodiscard]] ShellAnswer run_shell(const std::string& file, const Words&... words) {
    return run_shell_words(file, {words...});
}

}  // namespace flutebook::fixture
