#include "tests/system/golden.hpp"

#include <fstream>
#include <sstream>
#include <vector>

#include "tests/support/child.hpp"

namespace flutebook::fixture {

std::string approved_answer(const std::string& name) {
    std::ostringstream file;
    file << std::ifstream(FLUTEBOOK_SOURCE_DIR "/tests/system/golden/" + name).rdbuf();
    return file.str();
}

std::string difference(const std::string& approved, const std::string& printed) {
    const std::vector<std::string> left = lines_of(approved);
    const std::vector<std::string> right = lines_of(printed);
    for (std::size_t i = 0; i < left.size() || i < right.size(); ++i) {
        const std::string was = i < left.size() ? left[i] : "(end)";
        const std::string is = i < right.size() ? right[i] : "(end)";
        if (was != is) return "line " + std::to_string(i + 1) + "\n  was " + was + "\n  is  " + is;
    }
    return approved == printed ? "" : "line ends";
}

}  // namespace flutebook::fixture
