// Answers that were approved and are compared to the byte. tests/system/approve.sh shows what has changed and approves
// it.
#pragma once

#include <string>

namespace flutebook::fixture {

/// tests/system/golden/NAME.
[[nodiscard]] std::string approved_answer(const std::string& name);

/// The first line that differs, with its number; empty where nothing does. The whole pages would hide it.
[[nodiscard]] std::string difference(const std::string& approved, const std::string& printed);

}  // namespace flutebook::fixture
