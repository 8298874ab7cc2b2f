// The server of HTTP/1.1: sockets, limits and deadlines; it knows nothing of what is served. The one place that knows
// the library of HTTP.
//
// One thread reads and writes all sockets; the site is asked on worker threads. A request that is refused here is
// answered with its reason, and its connection is closed.
#pragma once

#include <array>
#include <chrono>
#include <csignal>
#include <cstddef>
#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "host/http/message.hpp"

namespace flutebook::http {

/// What one connection may take.
struct ServerLimits {
    std::size_t header_bytes = 16 * 1024;
    std::size_t headers = 40;
    std::size_t connections = 256;
    /// A whole message must be here within this time, and a second more for each `bytes_a_second` of its body; and a
    /// response must be taken within it.
    std::chrono::milliseconds message{10'000};
    std::size_t bytes_a_second = 64 * 1024;
    std::chrono::milliseconds idle{15'000};  // between two requests of a connection
    std::chrono::milliseconds end{10'000};   // for what is under way when the server ends
};

/// What is served. Called from several threads at once.
class Site {
public:
    using Done = std::function<void(Response)>;

    Site() = default;
    Site(const Site&) = delete;
    Site& operator=(const Site&) = delete;
    virtual ~Site() = default;

    /// Asked once the head of a request is here, before its body: how many bytes it may have, or why it is refused.
    /// Never waits.
    [[nodiscard]] virtual std::variant<std::size_t, Response> admit(const Request& head) = 0;

    /// Answers, by calling `done` once, now or later, from any thread. Throws nothing.
    virtual void answer(Request request, Done done) = 0;

    /// The page of a request that is refused before it is known who asks.
    [[nodiscard]] virtual Response refusal(int status, const std::string& text) = 0;
};

/// Open sockets, by their numbers: the one that listens, and connections on which nothing of a request was read.
struct Sockets {
    int listening = -1;
    std::vector<int> waiting;
};

/// Those that run() takes, also where they were blocked before it.
inline constexpr std::array<int, 3> taken_signals = {SIGTERM, SIGINT, SIGHUP};

class Server {
public:
    /// Serves on these sockets, which are its own from here on. `site` must outlive it.
    Server(const Sockets& sockets, Site& site, const ServerLimits& limits = {});
    Server(const Server&) = delete;
    Server& operator=(const Server&) = delete;
    ~Server();

    [[nodiscard]] std::uint16_t port() const;

    /// What a worker does at each SIGHUP, which otherwise ends the program. Before run().
    void at_hang_up(std::function<void()> act);

    /// Makes run() return sockets. Any thread.
    void hand_over();

    /// Serves until SIGTERM or SIGINT: then nobody new is let in, and what is under way is answered. After hand_over()
    /// the same, and returns the sockets that are left, on which nobody was refused: they are the caller's.
    [[nodiscard]] std::optional<Sockets> run(unsigned workers);

private:
    struct Service;
    std::unique_ptr<Service> service_;
};

}  // namespace flutebook::http
