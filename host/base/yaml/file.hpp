// The bytes of a file that a person wrote, checked to be text and not too large.
#pragma once

#include <optional>
#include <string>

#include "host/base/diagnostics.hpp"

namespace flutebook::base {

/// Largest file of a plant, in bytes.
inline constexpr std::size_t largest_file = 256 * 1024;

/// The file's text without a byte order mark; nothing, and a complaint, where it is missing, no plain file, too large,
/// or holds what is not UTF-8 text (a NUL or another control character, or a tab that indents).
[[nodiscard]] std::optional<std::string> read_text_file(const std::string& file, Diagnostics& complaints);

/// The same checks for a text already in memory; `file` names it.
[[nodiscard]] std::optional<std::string> check_text(std::string text, const std::string& file, Diagnostics& complaints);

}  // namespace flutebook::base
