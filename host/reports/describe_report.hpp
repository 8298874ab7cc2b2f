// `plugin describe`: a plugin's own account of itself, as a report and as an entry for plugins.yaml.
#pragma once

#include <string>

#include "host/answers/plugin_answer.hpp"
#include "host/render/report.hpp"

namespace flutebook::reports {

/// Whether the entry for plugins.yaml stands in the report.
enum class YamlEntry { left_out, included };

/// Needs, settings, what it provides, charges and sheds, and when it refuses an order.
[[nodiscard]] render::Report describe_report(const answers::DescribedModel& described, YamlEntry yaml);

/// An entry of `plugins`, indented to be appended to plugins.yaml: every setting with its sentence and its default. A
/// setting that must be given stands there empty, and the file is refused until somebody fills it in. Below it, as
/// comments, what a request may set.
[[nodiscard]] std::string describe_yaml(const answers::DescribedModel& described);

}  // namespace flutebook::reports
