#include "tests/unit/sdk/compiler.hpp"

#include <unistd.h>

#include <array>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <stdexcept>

namespace flutebook::sdk_test {

Verdict Compiler::judge(const std::string& text, const std::string& options) const {
    static int asked = 0;
    const auto source = std::filesystem::temp_directory_path() /
                        ("sdk test " + std::to_string(getpid()) + " " + std::to_string(++asked) + ".txt");
    std::ofstream(source, std::ios::binary) << text;
    const std::string command = "LC_ALL=C '" + program_ +
                                "' -fsyntax-only -Wall -Wextra -pedantic -Werror -I '" FLUTEBOOK_SOURCE_DIR
                                "/sdk/include' " +
                                options + " '" + source.string() + "' 2>&1";
    FILE* answer = popen(command.c_str(), "r");
    if (answer == nullptr) throw std::runtime_error("no shell: " + command);
    std::string said;
    std::array<char, 4096> piece;
    for (std::size_t length; (length = fread(piece.data(), 1, piece.size(), answer)) > 0;)
        said.append(piece.data(), length);
    const int status = pclose(answer);
    std::filesystem::remove(source);
    return {status == 0, said};
}

const std::vector<Compiler>& compilers() {
    static const std::vector<Compiler> both = {{"g++", FLUTEBOOK_GXX}, {"clang++", FLUTEBOOK_CLANGXX}};
    return both;
}

}  // namespace flutebook::sdk_test
