#include "host/cli/plugin_command.hpp"

#include <nlohmann/json.hpp>

#include "host/cli/graph_dot.hpp"
#include "host/cli/graph_svg.hpp"
#include "host/cli/json_text.hpp"
#include "host/cli/plugin_json.hpp"
#include "host/cli/plugin_text.hpp"

namespace flutebook::cli {

namespace {

ExitCode draw_graph(const desk::Workplace& workplace, Output& output) {
    const Drawn drawn = drawn_as_svg(plugin_graph_dot(workplace));
    if (drawn.svg.empty()) {
        complain({drawn.complaint});
        return ExitCode::refused;
    }
    output.write(drawn.svg);
    return ExitCode::done;
}

}  // namespace

ExitCode run_plugin_list(const desk::Workplace& workplace, Form form, Output& output) {
    output.write(form == Form::json ? json_text(plugin_list_json(workplace)) : plugin_list_text(workplace));
    return ExitCode::done;
}

ExitCode run_plugin_graph(const desk::Workplace& workplace, PluginGraphCommand::As as, Output& output) {
    switch (as) {
        case PluginGraphCommand::As::json:
            output.write(json_text(plugin_graph_json(workplace)));
            break;
        case PluginGraphCommand::As::dot:
            output.write(plugin_graph_dot(workplace));
            break;
        case PluginGraphCommand::As::svg:
            return draw_graph(workplace, output);
        case PluginGraphCommand::As::text:
            output.write(plugin_graph_text(workplace));
            break;
    }
    return ExitCode::done;
}

}  // namespace flutebook::cli
