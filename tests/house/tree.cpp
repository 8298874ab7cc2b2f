// Reads the sources of a checkout: by git's list, else by walking.
#include "tests/house/tree.hpp"

#include <algorithm>
#include <array>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <memory>
#include <sstream>

namespace flutebook::house {

namespace fs = std::filesystem;

namespace {

std::vector<std::string> split(const std::string& text, char separator) {
    std::vector<std::string> parts;
    std::istringstream rest(text);
    for (std::string part; std::getline(rest, part, separator);) parts.push_back(part);
    return parts;
}

std::string in_shell_quotes(const std::string& text) {
    std::string quoted = "'";
    for (const char letter : text) quoted += letter == '\'' ? std::string("'\\''") : std::string(1, letter);
    return quoted + "'";
}

struct ClosePipe {
    void operator()(std::FILE* pipe) const { pclose(pipe); }
};

// Tracked files, and new ones that nothing ignores. Nothing at all where git is missing or will not answer.
std::vector<std::string> paths_by_git(const std::string& folder) {
    if (!fs::exists(fs::path(folder) / ".git")) return {};
    const std::string command =
        "git -C " + in_shell_quotes(folder) + " ls-files -z --cached --others --exclude-standard 2>/dev/null";
    const std::unique_ptr<std::FILE, ClosePipe> pipe(popen(command.c_str(), "r"));
    std::string output;
    std::array<char, 4096> piece{};
    for (std::size_t got = 0; pipe && (got = std::fread(piece.data(), 1, piece.size(), pipe.get())) > 0;)
        output.append(piece.data(), got);
    return split(output, '\0');
}

bool is_built(const std::string& top) {
    return top == ".git" || top == "build" || top.rfind("build-", 0) == 0;
}

std::vector<std::string> paths_by_walking(const std::string& folder) {
    std::vector<std::string> paths;
    for (fs::recursive_directory_iterator entry(folder), end; entry != end; ++entry) {
        const fs::path path = entry->path().lexically_relative(folder);
        if (entry.depth() == 0 && is_built(path.string()))
            entry.disable_recursion_pending();
        else if (entry->is_regular_file() && path.extension() != ".so")
            paths.push_back(path.generic_string());
    }
    return paths;
}

std::string text_of(const fs::path& file) {
    std::ostringstream text;
    text << std::ifstream(file, std::ios::binary).rdbuf();
    return text.str();
}

}  // namespace

std::string SourceFile::name() const {
    return fs::path(path).filename().string();
}
std::string SourceFile::extension() const {
    return fs::path(path).extension().string();
}
std::string SourceFile::folder() const {
    return fs::path(path).parent_path().generic_string();
}

const SourceFile* Tree::find(const std::string& path) const {
    const auto found =
        std::find_if(files.begin(), files.end(), [&](const SourceFile& file) { return file.path == path; });
    return found == files.end() ? nullptr : &*found;
}

Tree read_tree(const std::string& folder) {
    std::vector<std::string> paths = paths_by_git(folder);
    if (paths.empty()) paths = paths_by_walking(folder);
    std::sort(paths.begin(), paths.end());
    paths.erase(std::unique(paths.begin(), paths.end()), paths.end());

    Tree tree;
    for (const std::string& path : paths) {
        const fs::path file = fs::path(folder) / path;
        if (!fs::is_regular_file(file)) continue;  // tracked still, deleted already
        tree.files.push_back({path, split(text_of(file), '\n')});
    }
    return tree;
}

bool is_under(const std::string& path, const std::string& folder) {
    return path.rfind(folder + "/", 0) == 0;
}

std::string at(const SourceFile& file, std::size_t line_index) {
    return file.path + ":" + std::to_string(line_index + 1) + ": ";
}

}  // namespace flutebook::house
