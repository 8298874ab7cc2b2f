// `plugin describe FILE`: what a plugin says of itself, in four forms.
#pragma once

#include "host/cli/arguments.hpp"
#include "host/cli/output.hpp"

namespace flutebook::cli {

[[nodiscard]] ExitCode run_plugin_describe(const PluginDescribeCommand& asked, Output& output);

}  // namespace flutebook::cli
