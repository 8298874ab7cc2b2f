#include "tests/check/running.hpp"

#include <unistd.h>

#include <chrono>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <system_error>
#include <thread>

namespace flutebook::check {

std::vector<pid_t> running(const std::string& word) {
    std::vector<pid_t> made;
    std::error_code failed;
    for (const auto& entry : std::filesystem::directory_iterator("/proc", failed)) {
        std::ifstream file(entry.path() / "cmdline", std::ios::binary);
        std::ostringstream words;
        if (!file) continue;
        words << '\0' << file.rdbuf();
        const bool is_other = entry.path().filename() != std::to_string(::getpid());
        if (is_other && words.str().find('\0' + word + '\0') != std::string::npos)
            made.push_back(std::stoi(entry.path().filename()));
    }
    return made;
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
