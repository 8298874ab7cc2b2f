// Sessions, identified by a secret in a cookie, and the one-time key with which the person at the terminal starts one.
// Kept in memory: they end with the server, unless it hands them over to the next.
//
// A session ends after half an hour without a request, and after twelve hours. Of its secret the hash alone is kept.
#pragma once

#include <chrono>
#include <map>
#include <mutex>
#include <optional>
#include <string>
#include <utility>

#include "host/pages/frame.hpp"

namespace flutebook::web {

struct Session {
    std::string person;  // what the ledger keeps of who did it
    pages::Role role = pages::Role::nobody;
    std::string token;  // of its forms
};

/// Any thread.
class Sessions {
public:
    using Clock = std::chrono::steady_clock;

    /// Begins one; the secret of its cookie.
    [[nodiscard]] std::string begin(const std::string& person, pages::Role role, Clock::time_point now);

    /// The session of a secret, as used now; nothing where there is none any longer.
    [[nodiscard]] std::optional<Session> find(const std::string& secret, Clock::time_point now);

    void end(const std::string& secret);
    /// All of a person's.
    void end_of(const std::string& person);

    /// A line for each, for another process of this machine; no secret is in it.
    [[nodiscard]] std::string in_lines() const;
    /// Takes over what another process wrote. Throws std::runtime_error where it is none of ours.
    void take(const std::string& lines);

private:
    struct KnownSession {
        Session session;
        Clock::time_point begun, seen;
    };
    [[nodiscard]] static bool is_over(const KnownSession& kept, Clock::time_point now);
    void make_room(Clock::time_point now);

    mutable std::mutex mutex_;
    std::map<std::string, KnownSession> by_hash_;
};

/// A secret that opens once; then another takes its place. Any thread.
class OneTimeKey {
public:
    explicit OneTimeKey(std::string first) : key_(std::move(first)) {}

    [[nodiscard]] std::string now() const;
    /// Whether `key` is it; it is used up then.
    [[nodiscard]] bool take(const std::string& key);

private:
    mutable std::mutex mutex_;
    std::string key_;
};

}  // namespace flutebook::web
