// `plugin describe` as people read it in a terminal.
#pragma once

#include <string>

#include "host/desk/describe.hpp"

namespace flutebook::cli {

[[nodiscard]] std::string describe_text(const desk::Description& description);

}  // namespace flutebook::cli
