// `plugin describe --markdown`: a page about a model, the same from every build of it: no file, no compiler.
#pragma once

#include <string>

#include "host/services/plugins/describe.hpp"

namespace flutebook::reports {

[[nodiscard]] std::string describe_markdown(const services::DescribedModel& description);

}  // namespace flutebook::reports
