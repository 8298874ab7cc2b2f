// A fuzzer is a program: `fuzz_NAME --seed N --cases N [--only N]`. Each case is made from the seed and its number; the
// first one in which something is wrong is told, kept in a file and ends the program with 1. A crash or a case of more
// than twenty seconds is told with its number too.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "tests/fuzz/mutation.hpp"

namespace flutebook::fuzz {

/// What became of a case that went as it must.
enum class CaseEnd { refused, answered };

/// A case in which something is wrong: what, and the text that did it.
struct WrongCase {
    std::string what, text;
};

/// Runs the cases that the command line asks for. `run_case` throws WrongCase; another exception is wrong as well.
/// Returns the program's exit code.
[[nodiscard]] int run_fuzzer(int count, char** words, const std::function<CaseEnd(Draws&)>& run_case);

/// What is wrong with the lines of a refusal; nothing where each begins with one of the `places`, says something, and
/// is one line that can be seen.
[[nodiscard]] std::optional<std::string> fault_of_refusal(const std::vector<std::string>& lines,
                                                          const std::vector<std::string>& places);

/// What is wrong with an answer's JSON document: it cannot be read, or a figure is not finite or below zero that cannot
/// be. `may_be_negative` are the keys whose numbers may lie below zero.
[[nodiscard]] std::optional<std::string> fault_of_document(const std::string& text,
                                                           const std::vector<std::string>& may_be_negative);

/// The text of a file of the project.
[[nodiscard]] std::string read_file(const std::string& file);

}  // namespace flutebook::fuzz
