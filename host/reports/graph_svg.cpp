// The graph goes in as a file that has no name, the drawing comes out through a pipe: neither waits for the other.
#include "host/reports/graph_svg.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <cstdio>
#include <memory>
#include <system_error>

extern char** environ;

namespace flutebook::reports {

namespace {

struct CloseFile {
    void operator()(std::FILE* file) const { std::fclose(file); }
};
using File = std::unique_ptr<std::FILE, CloseFile>;

struct FileActions {
    FileActions() { posix_spawn_file_actions_init(&actions); }
    ~FileActions() { posix_spawn_file_actions_destroy(&actions); }
    FileActions(const FileActions&) = delete;
    FileActions& operator=(const FileActions&) = delete;
    posix_spawn_file_actions_t actions{};
};

Drawn failed(const std::string& why) {
    return {"", fmt::format("plugin graph: cannot be drawn: {}, or draw what --dot answers elsewhere", why)};
}

std::string reason(int error) {
    return std::generic_category().message(error);
}

std::string read_all(int from) {
    std::string result;
    std::array<char, 65536> piece{};
    for (ssize_t got = 0; (got = ::read(from, piece.data(), piece.size())) != 0;) {
        if (got < 0 && errno == EINTR) continue;
        if (got < 0) break;
        result.append(piece.data(), static_cast<std::size_t>(got));
    }
    return result;
}

int status_of(pid_t child) {
    int status = -1;
    while (::waitpid(child, &status, 0) < 0 && errno == EINTR) continue;
    return status;
}

}  // namespace

Drawn drawn_as_svg(const std::string& dot) {
    const File graph(std::tmpfile());
    if (!graph || std::fwrite(dot.data(), 1, dot.size(), graph.get()) != dot.size() || std::fflush(graph.get()) != 0)
        return failed(reason(errno) + "; try again");
    std::rewind(graph.get());
    std::array<int, 2> ends{};
    if (::pipe2(ends.data(), O_CLOEXEC) != 0) return failed(reason(errno) + "; try again");
    const File out(::fdopen(ends[0], "r"));
    FileActions given;
    posix_spawn_file_actions_adddup2(&given.actions, ::fileno(graph.get()), STDIN_FILENO);
    posix_spawn_file_actions_adddup2(&given.actions, ends[1], STDOUT_FILENO);
    std::string program = "dot", form = "-Tsvg";
    const std::array<char*, 3> words = {program.data(), form.data(), nullptr};
    pid_t child = 0;
    const int error = ::posix_spawnp(&child, "dot", &given.actions, nullptr, words.data(), environ);
    ::close(ends[1]);
    if (error == ENOENT) return failed("there is no program `dot`; install graphviz");
    if (error != 0) return failed(reason(error) + "; try again");
    std::string svg = read_all(ends[0]);
    if (status_of(child) != 0 || svg.empty()) return failed("the program `dot` did not finish; see what it said");
    return {std::move(svg), ""};
}

}  // namespace flutebook::reports
