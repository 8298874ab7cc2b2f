// What the program writes: the answer on standard output, complaints on standard error.
//
// A reader that goes away is not a crash: SIGPIPE is ignored and every write is looked at.
#pragma once

#include <string>
#include <vector>

#include "host/cli/exit_code.hpp"

namespace flutebook::cli {

/// Before anything else is opened: SIGPIPE is ignored, and a standard stream that the caller closed is occupied, so
/// that no file of ours takes its number.
void prepare_streams();

/// The answer. One thread at a time.
class Output {
public:
    /// Written at once. After the first failure nothing more is tried.
    void write(const std::string& text);

    /// False once a write failed: no later write is tried.
    [[nodiscard]] bool is_open() const { return is_open_; }

    /// `refused` where not all could be written. Why is said on standard error, unless the reader simply left.
    [[nodiscard]] ExitCode close();

private:
    bool is_open_ = true;
    int reason_ = 0;  // errno of the failure
};

/// One finished sentence a line, each cleaned of control characters. Never fails.
void complain(const std::vector<std::string>& lines);

[[nodiscard]] bool is_terminal_output();
[[nodiscard]] bool is_terminal_error();

/// The line on a terminal's standard error that is overwritten while work goes on; empty takes it away.
void show_progress(const std::string& line);

}  // namespace flutebook::cli
