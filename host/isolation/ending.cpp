#include "host/isolation/ending.hpp"

#include <fmt/format.h>

#include <csignal>

#include "host/trial/guarded.hpp"

namespace flutebook::isolation {

std::string ending(const trial::Ended& ended) {
    switch (ended.signal) {
        case 0:
            return fmt::format("ended its process with code {}", ended.code);
        case SIGKILL:
            return "was killed (SIGKILL)";
        case SIGSYS:
            return "asked the system for what no model needs (SIGSYS)";
        default:
            return fmt::format("crashed ({})", trial::signal_name(ended.signal));
    }
}

}  // namespace flutebook::isolation
