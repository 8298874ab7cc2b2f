#include "host/handover/handover.hpp"

#include <arpa/inet.h>
#include <fcntl.h>
#include <fmt/format.h>
#include <sys/mman.h>
#include <sys/socket.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <csignal>
#include <cstdlib>
#include <cstring>
#include <fstream>
#include <iterator>
#include <sstream>
#include <system_error>
#include <vector>

#include "host/base/errors.hpp"
#include "host/sandbox/child.hpp"

namespace flutebook::handover {

namespace {

// "LISTENING KEPT WAITING...": numbers of open files.
constexpr const char* variable = "FLUTEBOOK_HANDED_OVER";

[[noreturn]] void give_up(const char* what) {
    throw std::system_error(errno, std::generic_category(), what);
}

std::string read_from_begin(int file) {
    std::string text;
    std::array<char, 65536> part{};
    ::lseek(file, 0, SEEK_SET);
    for (ssize_t got = 0; (got = ::read(file, part.data(), part.size())) > 0;)
        text.append(part.data(), static_cast<std::size_t>(got));
    return text;
}

int written(const std::string& text) {
    const int file = ::memfd_create("flutebook", MFD_CLOEXEC);
    if (file < 0) give_up("memory for what is handed over");
    for (std::size_t at = 0; at < text.size();) {
        const ssize_t count = ::write(file, text.data() + at, text.size() - at);
        if (count < 0) give_up("memory for what is handed over");
        at += static_cast<std::size_t>(count);
    }
    return file;
}

// Each ends with a zero byte.
std::vector<std::string> own_words() {
    std::ifstream file("/proc/self/cmdline", std::ios::binary);
    std::vector<std::string> words;
    for (std::string word; std::getline(file, word, '\0');) words.push_back(word);
    return words;
}

}  // namespace

int listening_socket(std::uint16_t port) {
    sockaddr_in place{};
    place.sin_family = AF_INET;
    place.sin_port = htons(port);
    place.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
    const int one = 1;
    const int made = ::socket(AF_INET, SOCK_STREAM | SOCK_CLOEXEC, 0);
    if (made >= 0 && ::setsockopt(made, SOL_SOCKET, SO_REUSEADDR, &one, sizeof one) == 0 &&
        ::bind(made, reinterpret_cast<const sockaddr*>(&place), sizeof place) == 0 && ::listen(made, SOMAXCONN) == 0)
        return made;
    const int fault = errno;
    ::close(made);
    throw InputError(InputError::Whose::request,
                     {fmt::format("--port: cannot be listened on: found {} ({}); name another, or leave it out", port,
                                  std::strerror(fault))});
}

std::optional<Handover> taken_over() {
    const char* said = std::getenv(variable);
    if (said == nullptr) return std::nullopt;
    std::istringstream numbers(said);
    ::unsetenv(variable);
    Handover result;
    int kept = -1;
    numbers >> result.sockets.listening >> kept;
    result.sockets.waiting.assign(std::istream_iterator<int>(numbers), {});
    for (const int socket : result.sockets.waiting) ::fcntl(socket, F_SETFD, FD_CLOEXEC);
    ::fcntl(result.sockets.listening, F_SETFD, FD_CLOEXEC);
    result.kept = read_from_begin(kept);
    ::close(kept);
    return result;
}

void go_on(const Handover& with) {
    sigset_t waiting{};
    for (const int signal : http::taken_signals) ::sigaddset(&waiting, signal);
    ::pthread_sigmask(SIG_BLOCK, &waiting, nullptr);
    std::vector<int> files = {with.sockets.listening, written(with.kept)};
    files.insert(files.end(), with.sockets.waiting.begin(), with.sockets.waiting.end());
    std::string said;
    for (const int file : files) {
        ::fcntl(file, F_SETFD, 0);
        said += fmt::format("{} ", file);
    }
    if (::setenv(variable, said.c_str(), 1) != 0) give_up(variable);
    std::vector<std::string> words = own_words();
    std::vector<char*> pointers;
    for (std::string& word : words) pointers.push_back(word.data());
    pointers.push_back(nullptr);
    ::execv(sandbox::own_program().c_str(), pointers.data());
    give_up("the program cannot be started again");
}

}  // namespace flutebook::handover
