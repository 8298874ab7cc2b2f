// One connection to a server of this machine, kept for many requests: no more of HTTP than a bench needs.
#pragma once

#include <string>

namespace flutebook::bench {

class KeptConnection {
public:
    /// Throws std::runtime_error where nobody listens.
    KeptConnection(int port, std::string cookie);
    ~KeptConnection();
    KeptConnection(const KeptConnection&) = delete;
    KeptConnection& operator=(const KeptConnection&) = delete;

    /// The body of an answer 200. Throws std::runtime_error for any other.
    [[nodiscard]] std::string get(const std::string& path, const std::string& accept);

    /// `name=value` of the cookie that an answer sets. Throws std::runtime_error where it sets none.
    [[nodiscard]] std::string cookie_of(const std::string& path);

private:
    struct Answer {
        std::string head, body;
    };
    Answer ask(const std::string& path, const std::string& accept);

    int port_, socket_;
    std::string cookie_, unread_;
};

}  // namespace flutebook::bench
