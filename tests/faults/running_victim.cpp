#include "tests/faults/running_victim.hpp"

#include <fcntl.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <csignal>
#include <stdexcept>

namespace flutebook::fixture {

namespace {

std::string read_all(int descriptor) {
    std::string text;
    std::array<char, 4096> piece{};
    for (ssize_t size = 0; (size = read(descriptor, piece.data(), piece.size())) > 0;)
        text.append(piece.data(), static_cast<std::size_t>(size));
    return text;
}

}  // namespace

RunningVictim::RunningVictim(const std::vector<std::string>& words) {
    std::array<int, 2> said{}, errors{};
    if (pipe2(said.data(), O_CLOEXEC) != 0 || pipe2(errors.data(), O_CLOEXEC) != 0)
        throw std::runtime_error("no pipe to the victim");
    posix_spawn_file_actions_t actions;
    posix_spawn_file_actions_init(&actions);
    posix_spawn_file_actions_adddup2(&actions, said[1], STDOUT_FILENO);
    posix_spawn_file_actions_adddup2(&actions, errors[1], STDERR_FILENO);
    std::vector<std::string> all = {FLUTEBOOK_VICTIM};
    all.insert(all.end(), words.begin(), words.end());
    std::vector<char*> pointers;
    for (auto& word : all) pointers.push_back(word.data());
    pointers.push_back(nullptr);
    const int failed = posix_spawn(&number_, FLUTEBOOK_VICTIM, &actions, nullptr, pointers.data(), environ);
    posix_spawn_file_actions_destroy(&actions);
    close(said[1]);
    close(errors[1]);
    said_ = said[0];
    errors_ = errors[0];
    if (failed != 0) throw std::runtime_error("the victim does not start");
}

RunningVictim::~RunningVictim() {
    if (number_ > 0) {
        kill_now();
        waitpid(number_, nullptr, 0);
    }
    close(said_);
    close(errors_);
}

bool RunningVictim::read_more() {
    std::array<char, 256> piece{};
    const auto size = read(said_, piece.data(), piece.size());
    if (size > 0) text_.append(piece.data(), static_cast<std::size_t>(size));
    return size > 0;
}

void RunningVictim::wait_for_lines(std::size_t count) {
    while (static_cast<std::size_t>(std::count(text_.begin(), text_.end(), '\n')) < count && read_more()) continue;
}

void RunningVictim::kill_now() {
    kill(number_, SIGKILL);
}

VictimEnd RunningVictim::end() {
    while (read_more()) continue;
    const auto errors = read_all(errors_);
    int status = 0;
    waitpid(number_, &status, 0);
    number_ = -1;
    int done = 0;
    for (auto at = text_.find("done "); at != std::string::npos; at = text_.find("done ", at + 1)) ++done;
    return {WIFEXITED(status) ? WEXITSTATUS(status) : -1, WIFSIGNALED(status) ? WTERMSIG(status) : 0, done, errors};
}

VictimEnd run_victim(const std::vector<std::string>& words) {
    return RunningVictim(words).end();
}

}  // namespace flutebook::fixture
