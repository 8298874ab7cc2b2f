#include "tests/web/served.hpp"

#include <arpa/inet.h>
#include <fcntl.h>
#include <poll.h>
#include <spawn.h>
#include <sys/socket.h>
#include <sys/wait.h>
#include <unistd.h>

#include <csignal>
#include <fstream>
#include <sstream>
#include <stdexcept>

extern char** environ;

namespace flutebook::fixture {

namespace {

using Clock = std::chrono::steady_clock;
using namespace std::chrono_literals;

int milliseconds_to(Clock::time_point until) {
    return static_cast<int>(
        std::max<std::int64_t>(0, std::chrono::duration_cast<std::chrono::milliseconds>(until - Clock::now()).count()));
}

bool is_readable(int descriptor, Clock::time_point until) {
    pollfd one{descriptor, POLLIN, 0};
    return ::poll(&one, 1, milliseconds_to(until)) == 1;
}

}  // namespace

Served::Served(const std::string& plant, const std::vector<std::string>& words) : folder_(plant) {
    std::vector<std::string> all = {FLUTEBOOK_PROGRAM, "--plant", plant, "--ledger", plant + "/ledger.db", "serve"};
    all.insert(all.end(), words.begin(), words.end());
    std::vector<char*> arguments;
    for (std::string& word : all) arguments.push_back(word.data());
    arguments.push_back(nullptr);
    int pipe[2];
    if (::pipe2(pipe, O_CLOEXEC) != 0) throw std::runtime_error("no pipe");
    posix_spawn_file_actions_t actions;
    ::posix_spawn_file_actions_init(&actions);
    ::posix_spawn_file_actions_adddup2(&actions, pipe[1], STDOUT_FILENO);
    const std::string errors = folder_ + "/serve-errors";
    ::posix_spawn_file_actions_addopen(&actions, STDERR_FILENO, errors.c_str(), O_CREAT | O_WRONLY | O_APPEND, 0600);
    const int failed = ::posix_spawn(&process_, FLUTEBOOK_PROGRAM, &actions, nullptr, arguments.data(), environ);
    ::posix_spawn_file_actions_destroy(&actions);
    ::close(pipe[1]);
    output_ = pipe[0];
    if (failed != 0) throw std::runtime_error("the server cannot be started");
    const auto until = Clock::now() + 60s;
    while (text_.find('\n') == std::string::npos && is_readable(output_, until)) {
        const std::size_t before = text_.size();
        read_output();
        if (text_.size() == before) break;
    }
    const std::string mark = "127.0.0.1:";
    const std::size_t at = text_.find(mark);
    if (at != std::string::npos) port_ = static_cast<std::uint16_t>(std::stoi(text_.substr(at + mark.size())));
    for (std::size_t i = 0; i + 1 < words.size(); ++i)
        if (words[i] == "--port") port_ = static_cast<std::uint16_t>(std::stoi(words[i + 1]));
    if (port_ == 0 || text_.empty()) throw std::runtime_error("the server printed no address: " + this->errors());
}

Served::~Served() {
    if (process_ > 0) static_cast<void>(end(SIGTERM));
    ::close(output_);
}

void Served::read_output() {
    char bytes[4096];
    const ssize_t count = ::read(output_, bytes, sizeof bytes);
    if (count > 0) text_.append(bytes, static_cast<std::size_t>(count));
}

std::string Served::address() {
    while (is_readable(output_, Clock::now() + 20ms)) {
        const std::size_t before = text_.size();
        read_output();
        if (text_.size() == before) break;
    }
    const std::size_t at = text_.rfind("open ");
    return text_.substr(at + 5, text_.find('\n', at) - at - 5);
}

bool Served::is_alive() const {
    return process_ > 0 && ::kill(process_, 0) == 0 && ::waitpid(process_, nullptr, WNOHANG) == 0;
}

int Served::end(int signal) {
    int status = 0;
    ::kill(process_, signal);
    ::waitpid(process_, &status, 0);
    process_ = -1;
    return WIFEXITED(status) ? WEXITSTATUS(status) : -WTERMSIG(status);
}

std::string Served::errors() const {
    std::ostringstream text;
    text << std::ifstream(folder_ + "/serve-errors").rdbuf();
    return text.str();
}

std::string Reply::header(const std::string& name) const {
    std::istringstream lines(head);
    for (std::string line; std::getline(lines, line);) {
        const std::size_t colon = line.find(':');
        if (colon == std::string::npos) continue;
        std::string key = line.substr(0, colon);
        for (char& sign : key) sign = static_cast<char>(std::tolower(static_cast<unsigned char>(sign)));
        if (key != name) continue;
        std::string value = line.substr(colon + 1);
        while (!value.empty() && value.front() == ' ') value.erase(0, 1);
        while (!value.empty() && value.back() == '\r') value.pop_back();
        return value;
    }
    return "";
}

Wire::Wire(std::uint16_t port) : socket_(::socket(AF_INET, SOCK_STREAM | SOCK_CLOEXEC, 0)) {
    sockaddr_in place{};
    place.sin_family = AF_INET;
    place.sin_port = htons(port);
    place.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
    if (::connect(socket_, reinterpret_cast<sockaddr*>(&place), sizeof place) != 0) {
        ::close(socket_);
        throw std::runtime_error("the server cannot be reached");
    }
    const timeval patience{20, 0};
    ::setsockopt(socket_, SOL_SOCKET, SO_SNDTIMEO, &patience, sizeof patience);
}

Wire::~Wire() {
    ::close(socket_);
}

bool Wire::send(const std::string& bytes) {
    for (std::size_t sent = 0; sent < bytes.size();) {
        const ssize_t part = ::send(socket_, bytes.data() + sent, bytes.size() - sent, MSG_NOSIGNAL);
        if (part <= 0) return false;
        sent += static_cast<std::size_t>(part);
    }
    return true;
}

void Wire::end_sending() {
    ::shutdown(socket_, SHUT_WR);
}

bool Wire::read_some(Clock::time_point until) {
    if (!is_readable(socket_, until)) return false;
    char bytes[65536];
    const ssize_t count = ::recv(socket_, bytes, sizeof bytes, 0);
    if (count <= 0) return false;
    read_.append(bytes, static_cast<std::size_t>(count));
    return true;
}

Reply Wire::reply(std::chrono::milliseconds patience) {
    const auto until = Clock::now() + patience;
    Reply result;
    std::size_t end = 0;
    while ((end = read_.find("\r\n\r\n")) == std::string::npos)
        if (!read_some(until)) return result;
    result.head = read_.substr(0, end + 2);
    result.status = std::stoi(result.head.substr(9, 3));
    const std::string length = result.header("content-length");
    const std::size_t whole = end + 4 + (length.empty() ? 0 : std::stoul(length));
    while (read_.size() < whole)
        if (!read_some(until)) break;
    result.body = read_.substr(end + 4, whole - end - 4);
    read_.erase(0, std::min(whole, read_.size()));
    return result;
}

bool Wire::is_closed(std::chrono::milliseconds patience) {
    const auto until = Clock::now() + patience;
    while (Clock::now() < until) {
        if (!is_readable(socket_, until)) return false;
        char bytes[4096];
        if (::recv(socket_, bytes, sizeof bytes, 0) <= 0) return true;
    }
    return false;
}

Reply ask_raw(std::uint16_t port, const std::string& bytes) {
    Wire wire(port);
    static_cast<void>(wire.send(bytes));
    return wire.reply();
}

Browser::Browser(Served& served)
    : port_(served.port()), scheme_("http://"), host_("127.0.0.1:" + std::to_string(served.port())) {
    const std::string address = served.address();
    keep_cookie(get(address.substr(address.find("/session"))));
}

Browser::Browser(std::uint16_t port, std::string host) : port_(port), scheme_("https://"), host_(std::move(host)) {}

void Browser::keep_cookie(const Reply& reply) {
    const std::string given = reply.header("set-cookie");
    if (given.empty()) return;
    cookie_ = given.substr(0, given.find(';'));
    if (cookie_.back() == '=') cookie_.clear();
    token_.clear();
}

Reply Browser::send(const std::string& first_line, const std::string& headers, const std::string& body) {
    std::string head = first_line + " HTTP/1.1\r\nHost: " + host_ + "\r\n";
    if (!cookie_.empty()) head += "Cookie: " + cookie_ + "\r\n";
    head += headers;
    if (!body.empty() || first_line.rfind("POST", 0) == 0)
        head += "Content-Length: " + std::to_string(body.size()) + "\r\n";
    Reply reply = ask_raw(port_, head + "Connection: close\r\n\r\n" + body);
    keep_cookie(reply);
    return reply;
}

Reply Browser::get(const std::string& target, const std::string& accept) {
    return send("GET " + target, "Accept: " + accept + "\r\nSec-Fetch-Site: none\r\n");
}

std::string Browser::token() {
    if (!token_.empty()) return token_;
    const std::string page = get("/session").body, mark = "name=\"token\" value=\"";
    const std::size_t at = page.find(mark);
    if (at != std::string::npos) token_ = page.substr(at + mark.size(), 64);
    return token_;
}

Reply Browser::post(const std::string& target, Form form, const std::string& accept) {
    if (!cookie_.empty()) form.insert(form.begin(), {"token", token()});
    std::string body;
    for (const auto& [name, value] : form) body += (body.empty() ? "" : "&") + encoded(name) + "=" + encoded(value);
    return send("POST " + target,
                "Accept: " + accept + "\r\nOrigin: " + origin() +
                    "\r\nSec-Fetch-Site: same-origin\r\nContent-Type: application/x-www-form-urlencoded\r\n",
                body);
}

Reply Browser::post_csv(const std::string& target, const std::string& text, const std::string& accept) {
    const std::string token = this->token();
    return send("POST " + target,
                "Accept: " + accept + "\r\nOrigin: " + origin() + "\r\nX-Token: " + token +
                    "\r\nContent-Type: text/csv; charset=utf-8\r\n",
                text);
}

std::string encoded(const std::string& text) {
    static const char* const digits = "0123456789ABCDEF";
    std::string result;
    for (const char sign : text) {
        const auto byte = static_cast<unsigned char>(sign);
        if (std::isalnum(byte) != 0)
            result += sign;
        else
            result += {'%', digits[byte >> 4], digits[byte & 15]};
    }
    return result;
}

}  // namespace flutebook::fixture
