// `plugin describe --markdown`: a page about a model, the same from every build of it: no file, no compiler.
#pragma once

#include <string>

#include "host/desk/describe.hpp"

namespace flutebook::cli {

[[nodiscard]] std::string describe_markdown(const desk::Description& description);

}  // namespace flutebook::cli
