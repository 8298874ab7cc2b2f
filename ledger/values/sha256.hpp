// SHA-256, as the ledger's chain uses it.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace flutebook::ledger {

/// 32 bytes; all zero where there is nothing before.
using Hash = std::array<char, 32>;

/// Any thread.
[[nodiscard]] Hash sha256(std::string_view bytes);

[[nodiscard]] std::string to_hex(const Hash& hash);
/// From 64 hexadecimal digits of any case.
[[nodiscard]] std::optional<Hash> from_hex(std::string_view digits);

[[nodiscard]] inline std::string_view bytes_of(const Hash& hash) {
    return {hash.data(), hash.size()};
}
/// From bytes as they are stored; nothing where they are not 32.
[[nodiscard]] std::optional<Hash> from_bytes(std::string_view bytes);

}  // namespace flutebook::ledger
