// The database's own shell, as anybody who can read the file may run it.
#pragma once

#include <string>

namespace flutebook::fixture {

struct ShellAnswer {
    int exit_code;
    std::string output, errors;
};

/// Runs SQL on a file and answers with rows of columns that stand apart by `|`. Throws std::runtime_error where there
/// is no shell.
[[nodiscard]] ShellAnswer run_shell(const std::string& file, const std::string& sql);

}  // namespace flutebook::fixture
