#include "host/cli/progress.hpp"

#include <fmt/format.h>

namespace flutebook::cli {

std::optional<std::string> Progress::line(std::size_t done, Clock::time_point now) {
    using namespace std::chrono_literals;
    if (now - begun_ < 2s || now - last_ < 250ms || done >= all_) return std::nullopt;
    last_ = now;
    was_shown_ = true;
    return fmt::format("{} of {} requests costed", done, all_);
}

}  // namespace flutebook::cli
