// `flutebook serve` as a process of its own, for the time of a bench.
#pragma once

#include <sys/types.h>

#include <cstdio>
#include <string>

namespace flutebook::bench {

class ServedPlant {
public:
    /// `ledger`: its file; empty: the plant's own. Starts it and waits until it serves. Throws std::runtime_error where
    /// it does not.
    ServedPlant(const std::string& program, const std::string& plant, const std::string& ledger = "");
    /// Ends it.
    ~ServedPlant();
    ServedPlant(const ServedPlant&) = delete;
    ServedPlant& operator=(const ServedPlant&) = delete;

    [[nodiscard]] int port() const { return port_; }

    /// The cookie of a session that the newest address opened. Throws std::runtime_error.
    [[nodiscard]] std::string new_session();

    /// Of all its threads, those that ended left out.
    [[nodiscard]] double processor_seconds() const;
    /// The most at any time so far.
    [[nodiscard]] double peak_resident_bytes() const;

private:
    // Its path; the port is taken from it.
    [[nodiscard]] std::string next_address();

    pid_t id_ = 0;
    int port_ = 0;
    std::FILE* said_ = nullptr;
    std::string path_;  // of the address that nobody opened yet
};

}  // namespace flutebook::bench
