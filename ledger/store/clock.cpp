#include "ledger/store/clock.hpp"

namespace flutebook::ledger {

namespace {

class MachineClock : public Clock {
public:
    [[nodiscard]] std::chrono::sys_seconds now() const override {
        return std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now());
    }
};

}  // namespace

const Clock& machine_clock() {
    static const MachineClock clock;
    return clock;
}

}  // namespace flutebook::ledger
