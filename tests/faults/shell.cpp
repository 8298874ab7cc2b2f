#include "tests/faults/shell.hpp"

#include "tests/support/child.hpp"

namespace flutebook::fixture {

ShellAnswer run_shell_words(const std::string& file, const std::vector<std::string>& words) {
    std::vector<std::string> all = {"/usr/bin/sqlite3", "-batch", "-bail", file};
    all.insert(all.end(), words.begin(), words.end());
    const auto ended = run({all});
    return {ended.exit_code, ended.output, ended.errors};
}

}  // namespace flutebook::fixture
