#include "host/sandbox/ending.hpp"

#include <fmt/format.h>

#include <csignal>

namespace flutebook::sandbox {

std::string ending(const Ended& ended) {
    switch (ended.signal) {
        case 0:
            return fmt::format("ended its process with code {}", ended.code);
        case SIGKILL:
            return "was killed (SIGKILL)";
        case SIGSYS:
            return "asked the system for what no model needs (SIGSYS)";
        default:
            return fmt::format("crashed ({})", signal_name(ended.signal));
    }
}

std::string signal_name(int signal) {
    const char* short_name = ::sigabbrev_np(signal);
    return short_name == nullptr ? "signal " + std::to_string(signal) : std::string("SIG") + short_name;
}

}  // namespace flutebook::sandbox
