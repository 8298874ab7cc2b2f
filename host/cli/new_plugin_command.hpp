// `plugin new NAME`: starts a plugin, and says what to do with it.
//
// `--json`: {"folder", "files": [...], "prefix"}: what was written, by path from the folder, and where CMake finds the
// SDK.
#pragma once

#include "host/cli/arguments.hpp"
#include "host/cli/output.hpp"

namespace flutebook::cli {

[[nodiscard]] ExitCode run_plugin_new(const PluginNewCommand& asked, Output& output);

}  // namespace flutebook::cli
