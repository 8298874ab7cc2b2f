#include "host/cli/plugin_command.hpp"

#include <nlohmann/json.hpp>

#include "host/cli/json_text.hpp"
#include "host/cli/plugin_json.hpp"
#include "host/cli/plugin_text.hpp"

namespace flutebook::cli {

ExitCode run_plugin_list(const desk::Workplace& workplace, Form form, Output& output) {
    output.write(form == Form::json ? json_text(plugin_list_json(workplace)) : plugin_list_text(workplace));
    return ExitCode::done;
}

ExitCode run_plugin_graph(const desk::Workplace& workplace, Form form, Output& output) {
    output.write(form == Form::json ? json_text(plugin_graph_json(workplace)) : plugin_graph_text(workplace));
    return ExitCode::done;
}

}  // namespace flutebook::cli
