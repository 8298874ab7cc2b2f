// The only source of the current time for the ledger.
#pragma once

#include <chrono>

namespace flutebook::ledger {

/// What time it is, UTC. May be called from whichever thread uses the store.
class Clock {
public:
    Clock() = default;
    Clock(const Clock&) = delete;
    Clock& operator=(const Clock&) = delete;
    virtual ~Clock() = default;

    [[nodiscard]] virtual std::chrono::sys_seconds now() const = 0;
};

/// A clock that is behind the newest entry of a ledger.
struct ClockLag {
    std::chrono::sys_seconds clock, newest;
};

/// The machine's own clock. Lives as long as the program.
[[nodiscard]] const Clock& machine_clock();

}  // namespace flutebook::ledger
