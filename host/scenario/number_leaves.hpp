// The numbers below a node of a file, and the paths of nodes: entries of maps by their keys, entries of lists by the
// day that they count from, else by their number from 1; models of a plant by their ids.
#pragma once

#include <cstddef>
#include <map>
#include <string>
#include <vector>

#include "host/base/yaml/node.hpp"
#include "host/scenario/number_change.hpp"

namespace flutebook::scenario {

struct NumberLeaf {
    std::string path;
    base::Node* node;  // of the tree that was given
    WrittenNumber number;
};

/// In the order of the file. Keys, days and words are none.
[[nodiscard]] std::vector<NumberLeaf> number_leaves(base::Node& node, const std::string& path);

/// What an entry of a list is called: "[2026-09-01]", and always "[2]".
[[nodiscard]] std::vector<std::string> names_of_item(const base::Node& item, std::size_t index);

/// The path of each value and each key below a node, by its place.
void add_paths(const base::Node& node, const std::string& path, std::map<std::string, std::string>& by_place);

}  // namespace flutebook::scenario
