// A plant's server as a process of its own, a raw connection to it, and a browser that keeps its cookie.
#pragma once

#include <sys/types.h>

#include <chrono>
#include <cstdint>
#include <map>
#include <string>
#include <vector>

#include "host/sandbox/build.hpp"

namespace flutebook::fixture {

/// What a request accepts that wants the answer, not its page.
inline constexpr const char* as_document = "application/json";

/// `flutebook serve` on a plant's folder, with its ledger there. Ended by SIGTERM when it goes out of scope.
class Served {
public:
    explicit Served(const std::string& plant, const std::vector<std::string>& words = {});
    Served(const Served&) = delete;
    Served& operator=(const Served&) = delete;
    ~Served();

    [[nodiscard]] std::uint16_t port() const { return port_; }
    [[nodiscard]] pid_t process() const { return process_; }
    /// The newest address that it printed.
    [[nodiscard]] std::string address();
    [[nodiscard]] bool is_alive() const;
    /// Sends the signal and waits; the exit code, or minus the signal that ended it.
    int end(int signal);
    /// What it wrote to standard error so far.
    [[nodiscard]] std::string errors() const;

private:
    void read_output();

    std::string folder_, text_;
    pid_t process_ = -1;
    int output_ = -1;
    std::uint16_t port_ = 0;
};

/// What came back, as bytes and taken apart.
struct Reply {
    int status = 0;  // 0: nothing came
    std::string head, body;

    /// Of the first header of this name in lower case; empty where there is none.
    [[nodiscard]] std::string header(const std::string& name) const;
};

/// A connection that sends whatever it is told.
class Wire {
public:
    explicit Wire(std::uint16_t port);
    Wire(const Wire&) = delete;
    Wire& operator=(const Wire&) = delete;
    ~Wire();

    /// False where the other side does not take it.
    bool send(const std::string& bytes);
    /// Nothing more comes; the other side is told.
    void end_sending();
    /// One reply, by its content-length; status 0 where the connection ended, or nothing came in time.
    [[nodiscard]] Reply reply(std::chrono::milliseconds patience = std::chrono::seconds(20) * sandbox::slowness);
    /// Whether the other side closed it within that time.
    [[nodiscard]] bool is_closed(std::chrono::milliseconds patience);

private:
    [[nodiscard]] bool read_some(std::chrono::steady_clock::time_point until);

    int socket_;
    std::string read_;
};

/// Bytes sent alone on a connection of their own.
[[nodiscard]] Reply ask_raw(std::uint16_t port, const std::string& bytes);

/// A browser at the server: keeps the cookie it is given, and knows the token of its forms.
class Browser {
public:
    /// Opens the server's newest address.
    explicit Browser(Served& served);
    /// A browser that nobody signed in with, whose requests come through a proxy for `host`.
    Browser(std::uint16_t port, std::string host);

    using Form = std::vector<std::pair<std::string, std::string>>;
    [[nodiscard]] Reply get(const std::string& target, const std::string& accept = "text/html");
    /// A form as a page of ours sends it, with its token.
    [[nodiscard]] Reply post(const std::string& target, Form form, const std::string& accept = "text/html");
    /// A file as a script of ours sends it.
    [[nodiscard]] Reply post_csv(const std::string& target, const std::string& text,
                                 const std::string& accept = "application/json");
    /// These bytes of a head, with the browser's own host and cookie behind the first line.
    [[nodiscard]] Reply send(const std::string& first_line, const std::string& headers, const std::string& body = "");

    [[nodiscard]] const std::string& cookie() const { return cookie_; }
    [[nodiscard]] std::string token();
    [[nodiscard]] std::string origin() const { return scheme_ + host_; }
    void forget() { cookie_.clear(); }

private:
    void keep_cookie(const Reply& reply);

    std::uint16_t port_;
    std::string scheme_, host_, cookie_, token_;
};

/// Encoded as a form or a query has it.
[[nodiscard]] std::string encoded(const std::string& text);

}  // namespace flutebook::fixture
