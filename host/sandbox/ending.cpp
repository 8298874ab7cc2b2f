#include "host/sandbox/ending.hpp"

#include <fmt/format.h>

#include <csignal>

#include "host/plugin_check/guarded.hpp"

namespace flutebook::sandbox {

std::string ending(const sandbox::Ended& ended) {
    switch (ended.signal) {
        case 0:
            return fmt::format("ended its process with code {}", ended.code);
        case SIGKILL:
            return "was killed (SIGKILL)";
        case SIGSYS:
            return "asked the system for what no model needs (SIGSYS)";
        default:
            return fmt::format("crashed ({})", plugin_check::signal_name(ended.signal));
    }
}

}  // namespace flutebook::sandbox
