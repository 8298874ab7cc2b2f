// The findings of a check as a page: rules in their groups, each with what became of it, then figures and a count.
#pragma once

#include <string>

#include "host/services/plugins/check_plugin.hpp"

namespace flutebook::reports {

[[nodiscard]] std::string check_text(const services::Checked& checked);

}  // namespace flutebook::reports
