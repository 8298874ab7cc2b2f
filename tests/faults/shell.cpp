#include "tests/faults/shell.hpp"

#include "tests/support/child.hpp"

namespace flutebook::fixture {

ShellAnswer run_shell(const std::string& file, const std::string& sql) {
    const auto ended = run({{"/usr/bin/sqlite3", "-batch", "-bail", file, sql}});
    return {ended.exit_code, ended.output, ended.errors};
}

}  // namespace flutebook::fixture
