// Quotes a piece of a person's file in a message: between backticks, and shortened.
#pragma once

#include <string>
#include <string_view>

namespace flutebook::base {

/// `text` between backticks, cut to about forty characters. `text` is UTF-8.
[[nodiscard]] std::string shown(std::string_view text);

/// The same cut without the backticks: for a key in a path.
[[nodiscard]] std::string shortened(std::string_view text);

}  // namespace flutebook::base
