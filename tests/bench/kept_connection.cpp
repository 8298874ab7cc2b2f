#include "tests/bench/kept_connection.hpp"

#include <arpa/inet.h>
#include <fmt/format.h>
#include <netinet/in.h>
#include <netinet/tcp.h>
#include <sys/socket.h>
#include <unistd.h>

#include <array>
#include <cstring>
#include <stdexcept>
#include <utility>

namespace flutebook::bench {

namespace {

// What a header says, its name in any case; empty where there is none.
std::string header(const std::string& head, const std::string& name) {
    const std::string begin = "\r\n" + name + ": ";
    const char* found = ::strcasestr(head.c_str(), begin.c_str());
    if (found == nullptr) return "";
    const std::string rest = found + begin.size();
    return rest.substr(0, rest.find('\r'));
}

}  // namespace

KeptConnection::KeptConnection(int port, std::string cookie)
    : port_(port), socket_(::socket(AF_INET, SOCK_STREAM | SOCK_CLOEXEC, 0)), cookie_(std::move(cookie)) {
    sockaddr_in there{};
    there.sin_family = AF_INET;
    there.sin_port = htons(static_cast<std::uint16_t>(port));
    there.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
    const int at_once = 1;
    ::setsockopt(socket_, IPPROTO_TCP, TCP_NODELAY, &at_once, sizeof at_once);
    if (::connect(socket_, reinterpret_cast<const sockaddr*>(&there), sizeof there) != 0)
        throw std::runtime_error(fmt::format("nobody listens at port {}", port));
}

KeptConnection::~KeptConnection() {
    ::close(socket_);
}

KeptConnection::Answer KeptConnection::ask(const std::string& path, const std::string& accept) {
    const std::string request = fmt::format("GET {} HTTP/1.1\r\nHost: 127.0.0.1:{}\r\nAccept: {}\r\n{}\r\n", path,
                                            port_, accept, cookie_.empty() ? "" : "Cookie: " + cookie_ + "\r\n");
    if (::send(socket_, request.data(), request.size(), MSG_NOSIGNAL) != static_cast<ssize_t>(request.size()))
        throw std::runtime_error("the server closed the connection");
    const auto read_more = [&] {
        std::array<char, 65536> part{};
        const ssize_t got = ::recv(socket_, part.data(), part.size(), 0);
        if (got <= 0) throw std::runtime_error("the server closed the connection: " + unread_.substr(0, 200));
        unread_.append(part.data(), static_cast<std::size_t>(got));
    };
    std::size_t end = 0;
    while ((end = unread_.find("\r\n\r\n")) == std::string::npos) read_more();
    Answer answer;
    answer.head = unread_.substr(0, end + 2);
    const std::string said_length = header(answer.head, "Content-Length");
    if (said_length.empty()) throw std::runtime_error("an answer without its length: " + answer.head);
    const std::size_t length = std::stoul(said_length);
    while (unread_.size() < end + 4 + length) read_more();
    answer.body = unread_.substr(end + 4, length);
    unread_.erase(0, end + 4 + length);
    return answer;
}

std::string KeptConnection::get(const std::string& path, const std::string& accept) {
    Answer answer = ask(path, accept);
    if (answer.head.rfind("HTTP/1.1 200 ", 0) != 0)
        throw std::runtime_error(path + ": answered by " + answer.head.substr(0, answer.head.find('\r')));
    return std::move(answer.body);
}

std::string KeptConnection::cookie_of(const std::string& path) {
    const std::string cookie = header(ask(path, "text/html").head, "Set-Cookie");
    if (cookie.empty()) throw std::runtime_error(path + ": set no cookie");
    return cookie.substr(0, cookie.find(';'));
}

}  // namespace flutebook::bench
