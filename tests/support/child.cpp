// fork and exec by hand: between the two stands nothing but calls that are safe there.
#include "tests/support/child.hpp"

#include <fcntl.h>
#include <poll.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <chrono>
#include <csignal>
#include <cstdlib>
#include <cstring>
#include <map>
#include <stdexcept>

extern char** environ;

namespace flutebook::fixture {

namespace {

constexpr std::chrono::seconds longest{120};

[[noreturn]] void give_up(const std::string& what) {
    throw std::runtime_error(what + ": " + std::strerror(errno));
}

// A pipe that closes itself and is not handed on to children.
struct Pipe {
    int read_end = -1, write_end = -1;

    Pipe() {
        std::array<int, 2> ends{};
        if (::pipe2(ends.data(), O_CLOEXEC) != 0) give_up("pipe");
        read_end = ends[0];
        write_end = ends[1];
    }
    Pipe(const Pipe&) = delete;
    Pipe& operator=(const Pipe&) = delete;
    ~Pipe() {
        close_read();
        close_write();
    }
    void close_read() { close_end(read_end); }
    void close_write() { close_end(write_end); }

private:
    static void close_end(int& end) {
        if (end >= 0) ::close(end);
        end = -1;
    }
};

std::vector<char*> pointers_to(std::vector<std::string>& texts) {
    std::vector<char*> result;
    for (std::string& text : texts) result.push_back(text.data());
    result.push_back(nullptr);
    return result;
}

std::vector<std::string> environment(const Child& child) {
    std::map<std::string, std::string> all;
    for (char** own = environ; *own != nullptr; ++own) {
        const std::string text = *own;
        all[text.substr(0, text.find('='))] = text.substr(text.find('=') + 1);
    }
    for (const auto& variable : child.variables) all[variable.first] = variable.second;
    std::vector<std::string> result;
    for (const auto& item : all) result.push_back(item.first + "=" + item.second);
    return result;
}

// In the child, after fork: never returns.
[[noreturn]] void become(const Child& child, char* const* words, char* const* variables, int output, int errors) {
    const int nothing = ::open("/dev/null", O_RDONLY);
    ::dup2(nothing, STDIN_FILENO);
    ::dup2(errors, STDERR_FILENO);
    if (child.output == StandardOutput::closed)
        ::close(STDOUT_FILENO);
    else
        ::dup2(child.output == StandardOutput::full_disk ? ::open("/dev/full", O_WRONLY) : output, STDOUT_FILENO);
    if (!child.folder.empty() && ::chdir(child.folder.c_str()) != 0) ::_exit(127);
    ::execve(words[0], words, variables);
    ::_exit(127);
}

// Appends what is there; false at the end of the stream.
bool take(int from, std::string& to) {
    std::array<char, 65536> bytes{};
    const ssize_t count = ::read(from, bytes.data(), bytes.size());
    if (count > 0) to.append(bytes.data(), static_cast<std::size_t>(count));
    return count > 0 || (count < 0 && errno == EINTR);
}

// Both streams at once, so that neither fills up while the other is waited for. False when time is up.
bool drain(Pipe& output, Pipe& errors, Ended& ended) {
    const auto end = std::chrono::steady_clock::now() + longest;
    while (output.read_end >= 0 || errors.read_end >= 0) {
        if (std::chrono::steady_clock::now() > end) return false;
        std::array<pollfd, 2> watched{{{output.read_end, POLLIN, 0}, {errors.read_end, POLLIN, 0}}};
        if (::poll(watched.data(), watched.size(), 200) <= 0) continue;
        if (watched[0].revents != 0 && !take(output.read_end, ended.output)) output.close_read();
        if (watched[1].revents != 0 && !take(errors.read_end, ended.errors)) errors.close_read();
    }
    return true;
}

}  // namespace

Ended run(const Child& child) {
    std::vector<std::string> words = child.words;
    std::vector<std::string> variables = environment(child);
    const std::vector<char*> word_pointers = pointers_to(words);
    const std::vector<char*> variable_pointers = pointers_to(variables);
    Pipe output;
    Pipe errors;
    if (child.output == StandardOutput::reader_gone) output.close_read();

    const pid_t process = ::fork();
    if (process < 0) give_up("fork");
    if (process == 0) become(child, word_pointers.data(), variable_pointers.data(), output.write_end, errors.write_end);
    output.close_write();
    errors.close_write();

    Ended ended{-1, 0, {}, {}};
    const bool in_time = drain(output, errors, ended);
    if (!in_time) ::kill(process, SIGKILL);
    int status = 0;
    while (::waitpid(process, &status, 0) < 0 && errno == EINTR) continue;
    if (!in_time) throw std::runtime_error(child.words[0] + ": has not ended in time");
    if (WIFEXITED(status)) ended.exit_code = WEXITSTATUS(status);
    if (WIFSIGNALED(status)) ended.signal = WTERMSIG(status);
    if (ended.exit_code == 127) throw std::runtime_error(child.words[0] + ": cannot be started");
    return ended;
}

std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> result;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t end = text.find('\n', at);
        result.push_back(text.substr(at, end == std::string::npos ? end : end - at));
        at = end == std::string::npos ? text.size() : end + 1;
    }
    return result;
}

}  // namespace flutebook::fixture
