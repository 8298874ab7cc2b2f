// JSON as bytes. The tree is the JSON library's; the writing is ours, because every number must be the shortest that
// reads back as the same double, and money must have no more than its four places.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>

namespace flutebook::answers {

using Json = nlohmann::ordered_json;

/// Keys in the order they were added. Two spaces a level; what holds nothing but plain values stands on one line. Text
/// that is no UTF-8 has its bad bytes replaced; a number that is not finite is null. Ends with a line end.
[[nodiscard]] std::string json_text(const Json& tree);

}  // namespace flutebook::answers
