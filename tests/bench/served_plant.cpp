#include "tests/bench/served_plant.hpp"

#include <fcntl.h>
#include <signal.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <filesystem>
#include <fstream>
#include <stdexcept>
#include <vector>

#include "tests/bench/kept_connection.hpp"

namespace flutebook::bench {

namespace {

constexpr const char* host = "http://127.0.0.1:";

}  // namespace

ServedPlant::ServedPlant(const std::string& program, const std::string& plant, const std::string& ledger) {
    std::array<int, 2> pipe{};
    if (::pipe2(pipe.data(), O_CLOEXEC) != 0) throw std::runtime_error("no pipe");
    posix_spawn_file_actions_t actions;
    posix_spawn_file_actions_init(&actions);
    posix_spawn_file_actions_adddup2(&actions, pipe[1], STDOUT_FILENO);
    std::vector<std::string> words = {program, "--plant", plant, "serve"};
    if (!ledger.empty()) words.insert(words.end() - 1, {"--ledger", ledger});
    std::vector<char*> arguments;
    for (std::string& word : words) arguments.push_back(word.data());
    arguments.push_back(nullptr);
    const int fault = posix_spawn(&id_, program.c_str(), &actions, nullptr, arguments.data(), ::environ);
    posix_spawn_file_actions_destroy(&actions);
    ::close(pipe[1]);
    if (fault != 0) throw std::runtime_error(program + ": cannot be started");
    said_ = ::fdopen(pipe[0], "r");
    path_ = next_address();
}

ServedPlant::~ServedPlant() {
    ::kill(id_, SIGTERM);
    ::waitpid(id_, nullptr, 0);
    std::fclose(said_);
}

std::string ServedPlant::next_address() {
    std::array<char, 512> line{};
    while (std::fgets(line.data(), line.size(), said_) != nullptr) {
        const std::string text = line.data();
        const auto at = text.find(host);
        if (at == std::string::npos) continue;
        const auto first = at + std::string(host).size();
        port_ = std::stoi(text.substr(first));
        const auto path = text.find('/', first);
        return text.substr(path, text.find_first_of(" \r\n", path) - path);
    }
    throw std::runtime_error("flutebook serve: said no address");
}

std::string ServedPlant::new_session() {
    KeptConnection connection(port_, "");
    std::string cookie = connection.cookie_of(path_);
    path_ = next_address();
    return cookie;
}

double ServedPlant::processor_seconds() const {
    double result = 0;
    for (const auto& task : std::filesystem::directory_iterator("/proc/" + std::to_string(id_) + "/task")) {
        double ran = 0;
        std::ifstream(task.path() / "schedstat") >> ran;
        result += ran / 1e9;
    }
    return result;
}

double ServedPlant::peak_resident_bytes() const {
    std::ifstream file("/proc/" + std::to_string(id_) + "/status");
    for (std::string line; std::getline(file, line);)
        if (line.rfind("VmHWM:", 0) == 0) return std::stod(line.substr(6)) * 1024;
    throw std::runtime_error("flutebook serve: its memory is not known");
}

}  // namespace flutebook::bench
