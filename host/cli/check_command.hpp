// `plugin check FILE`: a plugin tried by every rule, as text for its author and as JSON or JUnit's XML for machines.
#pragma once

#include "host/cli/arguments.hpp"
#include "host/cli/output.hpp"

namespace flutebook::cli {

[[nodiscard]] ExitCode run_plugin_check(const PluginCheckCommand& asked, Output& output);

}  // namespace flutebook::cli
