// A program run as a process of its own, as a shell would: what it wrote, and how it ended.
#pragma once

#include <string>
#include <utility>
#include <vector>

namespace flutebook::fixture {

/// Where the child's standard output leads. Captured is what a pipe into another program would read.
enum class StandardOutput { captured, closed, reader_gone, full_disk };

struct Child {
    std::vector<std::string> words;                                   // the program's path first
    std::string folder = {};                                          // to run in; empty: the test's own
    std::vector<std::pair<std::string, std::string>> variables = {};  // added to the environment, or changed in it
    StandardOutput output = StandardOutput::captured;
};

struct Ended {
    int exit_code;  // -1 where a signal ended it
    int signal;     // 0 where none did
    std::string output, errors;
};

/// Starts it with an empty standard input and waits for its end. Throws std::runtime_error where it cannot be started,
/// or has not ended after two minutes, and ends it then.
[[nodiscard]] Ended run(const Child& child);

/// Its lines, without their ends.
[[nodiscard]] std::vector<std::string> lines_of(const std::string& text);

}  // namespace flutebook::fixture
