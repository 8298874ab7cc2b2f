// JSON as bytes. The tree is the JSON library's; the writing is ours, because every number must be the shortest that
// reads back as the same double, and money must have no more than its four places.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>

#include "ledger/values/money.hpp"

namespace flutebook::answers {

using Json = nlohmann::ordered_json;

/// The version of every document that is written. It changes when a key goes or means something else, not when one is
/// added.
inline constexpr int document_version = 1;

/// A tree as a document: {"answer": name, "answer_version": version} stand before its own keys.
[[nodiscard]] Json document(const char* name, const Json& tree);
/// The same as text.
[[nodiscard]] std::string document_text(const char* name, const Json& tree);

/// A decimal number with up to 4 places.
[[nodiscard]] Json amount_json(Money amount);

/// Keys in the order they were added. Two spaces a level; what holds nothing but plain values stands on one line. Text
/// that is no UTF-8 has its bad bytes replaced; a number that is not finite is null. Ends with a line end.
[[nodiscard]] std::string json_text(const Json& tree);

}  // namespace flutebook::answers
