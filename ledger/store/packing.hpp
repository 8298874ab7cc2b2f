// Compresses the contents of saved quotes. The only code that includes zlib.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace flutebook::ledger {

/// Of one saved content: 64 MiB, far above any plant's files and results.
inline constexpr std::size_t largest_content = std::size_t{1} << 26U;

/// Nothing where the content is too small, or would not become much smaller.
[[nodiscard]] std::optional<std::string> packed(const std::string& content);

/// Nothing where `bytes` are not what packed() made of a content of `size` bytes.
[[nodiscard]] std::optional<std::string> unpacked(std::string_view bytes, std::int64_t size);

}  // namespace flutebook::ledger
