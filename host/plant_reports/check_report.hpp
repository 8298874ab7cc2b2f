// The findings of `plugin check`, for the plugin's author and for a build server.
#pragma once

#include <string>

#include "host/plant_answers/plugin_answer.hpp"
#include "host/render/report.hpp"

namespace flutebook::plant_reports {

/// Rule by rule, by groups; below a rule what was seen, and the command that shows it again.
[[nodiscard]] render::Report check_report(const plant_answers::Checked& checked);

/// JUnit's XML: a test case a rule.
[[nodiscard]] std::string check_junit(const plant_answers::Checked& checked);

}  // namespace flutebook::plant_reports
