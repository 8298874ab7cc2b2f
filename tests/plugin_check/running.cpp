#include "tests/plugin_check/running.hpp"

#include <unistd.h>

#include <chrono>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <system_error>
#include <thread>

namespace flutebook::check {

namespace {

// Every process that this one starts, and every process that those start, has this text in its environment, also after
// its parent has ended. Tests that run at the same time start processes of the same names.
const std::string own_mark = [] {
    const std::string number = std::to_string(::getpid());
    ::setenv("FLUTEBOOK_TEST_RUN", number.c_str(), 1);
    return "FLUTEBOOK_TEST_RUN=" + number;
}();

// Whether the text is one of the texts in the file, each ended by a NUL.
bool lists(const std::filesystem::path& path, const std::string& text) {
    std::ifstream file(path, std::ios::binary);
    std::ostringstream all;
    if (!file) return false;
    all << '\0' << file.rdbuf();
    return all.str().find('\0' + text + '\0') != std::string::npos;
}

}  // namespace

std::vector<pid_t> running(const std::string& word) {
    std::vector<pid_t> result;
    std::error_code failed;
    for (const auto& entry : std::filesystem::directory_iterator("/proc", failed)) {
        const std::filesystem::path& process = entry.path();
        if (process.filename() != std::to_string(::getpid()) && lists(process / "environ", own_mark) &&
            lists(process / "cmdline", word))
            result.push_back(std::stoi(process.filename()));
    }
    return result;
}

bool is_running(const std::string& word) {
    return !running(word).empty();
}

bool is_still_running(const std::string& word) {
    for (int look = 0; look < 100 && is_running(word); ++look)
        std::this_thread::sleep_for(std::chrono::milliseconds(50));
    return is_running(word);
}

}  // namespace flutebook::check
