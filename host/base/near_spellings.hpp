// The known name that is most like a misspelt one.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace flutebook::base {

/// The candidate that fewest edits (a letter more, fewer, other, or two swapped; case is free) make of `word`; the
/// first of equals. Nothing where even the best is another word: more than about a third of the letters differ.
[[nodiscard]] std::optional<std::string> nearest(std::string_view word, const std::vector<std::string>& candidates);

/// "; did you mean `KL135`" with the nearest candidate, else "; expected one of `KL135`, `TL125`" where the candidates
/// are few, else empty.
[[nodiscard]] std::string did_you_mean(std::string_view word, const std::vector<std::string>& candidates);

/// "; expected one of `B-140`, `C-125`", the first forty of many. For codes, which are not guessed: a code that is near
/// another names another board.
[[nodiscard]] std::string one_of(const std::vector<std::string>& codes);

}  // namespace flutebook::base
