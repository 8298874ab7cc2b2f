#include "host/contract/call.hpp"

#include <fmt/format.h>

#include "host/contract/floating_point.hpp"

namespace flutebook::contract {

std::optional<std::string> call(std::uint32_t (*evaluate)(const flutebook_block*), const flutebook_block& block) {
    const FloatingPointGuard guard;
    std::uint32_t answer = 0;
    try {
        answer = evaluate(&block);
    } catch (...) {
        return "threw an exception while it evaluated; catch it inside the plugin";
    }
    if (const auto change = guard.change())
        return fmt::format("changed {} while it evaluated; leave it as it was found", *change);
    if (answer != 0) return fmt::format("reported a fault of its own: found {}; ask its author", answer);
    return std::nullopt;
}

}  // namespace flutebook::contract
