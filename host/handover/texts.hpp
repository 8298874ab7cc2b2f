// Texts as bytes, for another process of this machine.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace flutebook::handover {

/// One after the other, whatever bytes they hold.
[[nodiscard]] std::string in_bytes(const std::vector<std::string>& texts);
/// Throws std::runtime_error where in_bytes() did not write it.
[[nodiscard]] std::vector<std::string> texts_of(std::string_view bytes);

/// What could not be read that another process left: never ours.
[[noreturn]] void fail_to_read();

}  // namespace flutebook::handover
