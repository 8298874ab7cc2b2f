// `plugin list` and `plugin graph`: which models the plant works with, and who feeds whom.
#pragma once

#include "host/cli/arguments.hpp"
#include "host/cli/output.hpp"
#include "host/services/workplace.hpp"

namespace flutebook::cli {

[[nodiscard]] ExitCode run_plugin_list(const services::Workplace& workplace, OutputFormat form, Output& output);
[[nodiscard]] ExitCode run_plugin_graph(const services::Workplace& workplace, PluginGraphCommand::As as,
                                        Output& output);

}  // namespace flutebook::cli
