// `plugin describe` as people read it in a terminal.
#pragma once

#include <string>

#include "host/services/plugins/describe.hpp"

namespace flutebook::reports {

[[nodiscard]] std::string describe_text(const services::DescribedModel& description);

}  // namespace flutebook::reports
