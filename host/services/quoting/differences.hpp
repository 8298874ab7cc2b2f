// What differs between two trees of names and values: a plant's files then and today, an answer then and today.
//
// A tree is laid out as its leaves, each under a path of names, and paths are compared: what stands in another order,
// or on another line, differs in nothing. Pure values; any thread.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "host/answers/recheck_answer.hpp"
#include "host/plant/yaml/node.hpp"

namespace flutebook::services {

/// The leaves of a file, in its order. A list's entry is named by its only key (a model), by the day it counts from (a
/// price), else by its number from 1.
[[nodiscard]] std::vector<answers::Leaf> leaves_of(const plant::Node& root);

/// In the order of `now`; what was taken out follows, in its own order. Values are compared as they were written.
[[nodiscard]] std::vector<answers::Difference> differences(const std::vector<answers::Leaf>& was,
                                                           const std::vector<answers::Leaf>& now);

}  // namespace flutebook::services
