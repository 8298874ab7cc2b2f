// Checks that every draft must pass before it can be an entry, of any kind of document.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "ledger/values/entry.hpp"

namespace flutebook::ledger {

/// More lines than this an entry cannot have, of movements or of expected losses.
inline constexpr std::size_t most_lines = 1000;

/// Where the names and the content of a draft come from: a document, or entries that the ledger has (what reverses one,
/// what closes a month). The note is new in either.
enum class DraftSource { document, books };

/// Why the draft is no document, as the end of a sentence; nothing where it is one.
[[nodiscard]] std::optional<std::string> fault_of(const Draft& draft, DraftSource source = DraftSource::document);

/// Why a text cannot be a name: too long, not UTF-8, or with characters that cannot be seen.
[[nodiscard]] std::optional<std::string> fault_of_name(std::string_view what, std::string_view name);

/// The same of a text of several lines: a reason, a note.
[[nodiscard]] std::optional<std::string> fault_of_note(std::string_view what, std::string_view note);

}  // namespace flutebook::ledger
