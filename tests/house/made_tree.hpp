// A small tree made for one test in a folder of its own: the control that shows that a rule does find its fault.
#pragma once

#include <filesystem>
#include <initializer_list>
#include <string>

#include "tests/house/tree.hpp"

namespace flutebook::house {

/// Owns its folder: made at construction, gone with the object.
class MadeTree {
public:
    struct MadeFile {
        std::string path, text;
    };

    MadeTree(std::initializer_list<MadeFile> files);
    ~MadeTree();
    MadeTree(const MadeTree&) = delete;
    MadeTree& operator=(const MadeTree&) = delete;

    [[nodiscard]] Tree read() const { return read_tree(folder_.string()); }
    [[nodiscard]] const std::filesystem::path& folder() const { return folder_; }

private:
    std::filesystem::path folder_;
};

/// The tree that these tests were built from.
[[nodiscard]] const Tree& our_house();

}  // namespace flutebook::house
