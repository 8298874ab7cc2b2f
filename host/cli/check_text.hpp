// The findings of a check as a page: rules in their groups, each with what became of it, then figures and a count.
#pragma once

#include <string>

#include "host/desk/check_plugin.hpp"

namespace flutebook::cli {

/// "holds", "broken", "not tried"
[[nodiscard]] std::string state_words(desk::Checked::State state);

[[nodiscard]] std::string check_text(const desk::Checked& checked);

}  // namespace flutebook::cli
