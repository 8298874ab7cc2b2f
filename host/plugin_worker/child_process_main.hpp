// What the processes do in which a model is described and works: the other end of worker.hpp and isolation.hpp.
#pragma once

#include <chrono>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "host/sandbox/build.hpp"

namespace flutebook::plugin_worker {

/// The longest time that one block may take, from the request to the answer; also a description, and the loading of a
/// model in a worker.
inline constexpr std::chrono::milliseconds deadline = std::chrono::seconds{2} * sandbox::slowness;

/// What a describing process says, each with one field: of the description, in its order; why it is refused; the end.
inline constexpr const char* field_word = "field";
inline constexpr const char* refused_word = "refused";
inline constexpr const char* end_word = "end";

/// The words that a describing process is started with. It finds where to report as descriptor 3, the file as 4.
[[nodiscard]] std::vector<std::string> words_to_describe(const std::string& file);

/// The words that a worker is started with. It finds the shared memory of so many bytes as descriptor 3, the file as 4.
[[nodiscard]] std::vector<std::string> words_to_work(const std::string& file, std::size_t bytes);

/// Where the words of the command line are those: does the work and returns the exit code. To be called before anything
/// else in a process, which is of no other use afterwards.
[[nodiscard]] std::optional<int> run_inside(int count, const char* const* words);

}  // namespace flutebook::plugin_worker
