// Makes and removes the folders of made trees; reads our own once.
#include "tests/house/made_tree.hpp"

#include <unistd.h>

#include <fstream>

namespace flutebook::house {

namespace fs = std::filesystem;

MadeTree::MadeTree(std::initializer_list<MadeFile> files) {
    static int result = 0;
    folder_ = fs::temp_directory_path() / ("made tree " + std::to_string(getpid()) + " " + std::to_string(++result));
    fs::create_directories(folder_);
    for (const auto& [path, text] : files) {
        fs::create_directories((folder_ / path).parent_path());
        std::ofstream(folder_ / path, std::ios::binary) << text;
    }
}

MadeTree::~MadeTree() {
    std::error_code ignored;
    fs::remove_all(folder_, ignored);
}

const Tree& our_house() {
    static const Tree tree = read_tree(FLUTEBOOK_SOURCE_DIR);
    return tree;
}

}  // namespace flutebook::house
