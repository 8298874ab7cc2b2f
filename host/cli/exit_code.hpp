// The exit codes of the program.
#pragma once

#include <algorithm>

namespace flutebook::cli {

/// The higher one wins where several things went wrong in one run.
enum class ExitCode {
    done = 0,
    refused = 1,  // a bad request, a quantity that nothing can make, an answer that could not be written
    misused = 2,  // wrong usage
    unfit = 3,    // the plant's files or a plugin
};

[[nodiscard]] inline ExitCode worse(ExitCode left, ExitCode right) {
    return std::max(left, right);
}

}  // namespace flutebook::cli
