// The findings of a check in JUnit's XML, as build servers read it: a rule is a test case of its group.
#pragma once

#include <string>

#include "host/services/plugins/check_plugin.hpp"

namespace flutebook::reports {

/// XML 1.0 in UTF-8, whatever the file is called and the plugin says.
[[nodiscard]] std::string check_junit(const services::Checked& checked);

}  // namespace flutebook::reports
