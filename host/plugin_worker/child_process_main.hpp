// The main functions of the two child processes: one describes a model (isolation.hpp), one evaluates it (worker.hpp).
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

/// The words of a report on a description: one of its fields, in order; why the model is refused; the end.
inline constexpr const char* field_word = "field";
inline constexpr const char* refused_word = "refused";
inline constexpr const char* end_word = "end";

/// The arguments of a process that describes a model. Descriptor 3 is its report, 4 is the file.
[[nodiscard]] std::vector<std::string> words_to_describe(const std::string& file);

/// The arguments of a worker. Descriptor 3 is the shared memory, 4 is the file.
[[nodiscard]] std::vector<std::string> words_to_work(const std::string& file, std::size_t bytes);

/// If the arguments are those of such a child: does its work and returns the exit code. To be called first in a
/// process, which must then end.
[[nodiscard]] std::optional<int> run_inside(int count, const char* const* words);

}  // namespace flutebook::plugin_worker
