// `plugin describe`: a plugin's own account of itself, as a report and as an entry for plugins.yaml.
#pragma once

#include <string>

#include "host/answers/plugin_answer.hpp"
#include "host/render/report.hpp"

namespace flutebook::reports {

/// What the report is for: a file at hand, named with its place and compiler; or a page about the model for any
/// machine, with its entry for plugins.yaml.
enum class DescribeScope { file, model };

/// Needs, settings, what it provides, charges and sheds, and when it refuses an order.
[[nodiscard]] render::Report describe_report(const answers::DescribedModel& described, DescribeScope scope);

/// An entry of `plugins`, indented to be appended to plugins.yaml: every setting with its sentence and its default. A
/// setting that must be given stands there empty, and the file is refused until somebody fills it in. Below it, as
/// comments, what a request may set.
[[nodiscard]] std::string describe_yaml(const answers::DescribedModel& described);

}  // namespace flutebook::reports
