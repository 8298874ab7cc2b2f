// `plugin facts`: every number that the host gives to whichever model needs it, from the host's own table.
//
// `--json`: {"facts": [{"name", "unit", "axis", "meaning", "low", "high", "replaceable"}...]}
#pragma once

#include "host/cli/arguments.hpp"
#include "host/cli/output.hpp"

namespace flutebook::cli {

[[nodiscard]] ExitCode run_plugin_facts(const PluginFactsCommand& asked, Output& output);

}  // namespace flutebook::cli
