// What every draft must be before it can be an entry, whatever it is a document of.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "ledger/values/entry.hpp"

namespace flutebook::ledger {

/// More lines than this an entry cannot have, of movements or of expected losses.
inline constexpr std::size_t most_lines = 1000;

/// Why the draft is no document, as the end of a sentence; nothing where it is one.
[[nodiscard]] std::optional<std::string> fault_of(const Draft& draft);

/// Why a text cannot be a name: too long, not UTF-8, or with control characters.
[[nodiscard]] std::optional<std::string> fault_of_name(std::string_view what, std::string_view name);

}  // namespace flutebook::ledger
