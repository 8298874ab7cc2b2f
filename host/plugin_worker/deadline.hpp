// How long a model may take that works in a process of its own.
#pragma once

#include <chrono>

#include "host/sandbox/build.hpp"

namespace flutebook::plugin_worker {

/// For one block, from the question to the answer; as long for it to be described, and for a worker to load it.
inline constexpr std::chrono::milliseconds deadline = std::chrono::seconds{2} * sandbox::slowness;

}  // namespace flutebook::plugin_worker
