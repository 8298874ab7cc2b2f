#include "host/web/sessions.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <sstream>
#include <stdexcept>
#include <utility>

#include "host/web/secrets.hpp"
#include "ledger/values/sha256.hpp"

namespace flutebook::web {

namespace {

using namespace std::chrono_literals;

constexpr auto longest_pause = 30min;
constexpr auto longest_session = 12h;
constexpr std::size_t most_sessions = 1000;

std::string hash_of(const std::string& secret) {
    return ledger::to_hex(ledger::sha256(secret));
}

}  // namespace

bool Sessions::is_over(const KnownSession& kept, Clock::time_point now) {
    return now - kept.seen > longest_pause || now - kept.begun > longest_session;
}

// The one that was not used for the longest goes where there are too many.
void Sessions::make_room(Clock::time_point now) {
    for (auto kept = by_hash_.begin(); kept != by_hash_.end();)
        kept = is_over(kept->second, now) ? by_hash_.erase(kept) : std::next(kept);
    if (by_hash_.size() < most_sessions) return;
    by_hash_.erase(std::min_element(by_hash_.begin(), by_hash_.end(), [](const auto& left, const auto& right) {
        return left.second.seen < right.second.seen;
    }));
}

std::string Sessions::begin(const std::string& person, pages::Role role, Clock::time_point now) {
    std::string secret = new_secret();
    const std::lock_guard lock(mutex_);
    make_room(now);
    KnownSession kept;
    kept.session.person = person;
    kept.session.role = role;
    kept.session.token = new_secret();
    kept.begun = kept.seen = now;
    by_hash_[hash_of(secret)] = std::move(kept);
    return secret;
}

std::optional<Session> Sessions::find(const std::string& secret, Clock::time_point now) {
    const std::lock_guard lock(mutex_);
    const auto found = by_hash_.find(hash_of(secret));
    if (found == by_hash_.end()) return std::nullopt;
    if (is_over(found->second, now)) {
        by_hash_.erase(found);
        return std::nullopt;
    }
    found->second.seen = now;
    return found->second.session;
}

void Sessions::end(const std::string& secret) {
    const std::lock_guard lock(mutex_);
    by_hash_.erase(hash_of(secret));
}

void Sessions::end_of(const std::string& person) {
    const std::lock_guard lock(mutex_);
    for (auto kept = by_hash_.begin(); kept != by_hash_.end();)
        kept = kept->second.session.person == person ? by_hash_.erase(kept) : std::next(kept);
}

// The clock is the machine's, the same in every process.
std::string Sessions::in_lines() const {
    const std::lock_guard lock(mutex_);
    std::string lines;
    for (const auto& [hash, kept] : by_hash_)
        lines += fmt::format("{} {} {} {} {} {}\n", hash, static_cast<int>(kept.session.role), kept.session.token,
                             kept.begun.time_since_epoch().count(), kept.seen.time_since_epoch().count(),
                             kept.session.person);
    return lines;
}

void Sessions::take(const std::string& lines) {
    const std::lock_guard lock(mutex_);
    std::istringstream stream(lines);
    for (std::string line; std::getline(stream, line);) {
        std::istringstream words(line);
        std::string hash;
        int role = 0;
        Clock::rep begun = 0, seen = 0;
        KnownSession kept;
        words >> hash >> role >> kept.session.token >> begun >> seen;
        if (!std::getline(words.ignore(), kept.session.person) || role > static_cast<int>(pages::Role::keeper))
            throw std::runtime_error("sessions were handed over that cannot be read");
        kept.session.role = static_cast<pages::Role>(role);
        kept.begun = Clock::time_point(Clock::duration(begun));
        kept.seen = Clock::time_point(Clock::duration(seen));
        by_hash_[hash] = std::move(kept);
    }
}

std::string OneTimeKey::now() const {
    const std::lock_guard lock(mutex_);
    return key_;
}

bool OneTimeKey::take(const std::string& key) {
    const std::lock_guard lock(mutex_);
    if (!is_same_secret(key, key_)) return false;
    key_ = new_secret();
    return true;
}

}  // namespace flutebook::web
