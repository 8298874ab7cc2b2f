// The sources of a checkout, read whole, as the rules of the house look at them.
//
// What git would commit, where the folder is a checkout and git is there to ask; else every file but what was built.
#pragma once

#include <string>
#include <vector>

namespace flutebook::house {

struct SourceFile {
    std::string path;  // from the top, parts joined by '/'
    std::vector<std::string> lines;

    [[nodiscard]] std::string name() const;       // "plugin.hpp"
    [[nodiscard]] std::string extension() const;  // ".hpp", or nothing
    [[nodiscard]] std::string folder() const;     // "sdk/include/flutebook", or nothing at the top
};

struct Tree {
    std::vector<SourceFile> files;  // by path

    [[nodiscard]] const SourceFile* find(const std::string& path) const;
};

/// What is wrong, one sentence a fault: `path:line: what`, or `path: what`.
using Faults = std::vector<std::string>;

[[nodiscard]] Tree read_tree(const std::string& folder);

/// Whether a path lies in a folder, at any depth.
[[nodiscard]] bool is_under(const std::string& path, const std::string& folder);

[[nodiscard]] std::string at(const SourceFile& file, std::size_t line_index);

}  // namespace flutebook::house
