#include "host/cli/plugin_command.hpp"

#include <nlohmann/json.hpp>

#include "host/answers/json_text.hpp"
#include "host/answers/plugin_json.hpp"
#include "host/render/text_report.hpp"
#include "host/reports/graph_drawing.hpp"
#include "host/reports/plugin_reports.hpp"

namespace flutebook::cli {

namespace {

ExitCode draw_graph(const services::Workplace& workplace, Output& output) {
    const reports::Drawn drawn =
        reports::drawn_as_svg(reports::plugin_graph_dot(workplace.plant, workplace.engine.graph()));
    if (drawn.svg.empty()) {
        complain({drawn.complaint});
        return ExitCode::refused;
    }
    output.write(drawn.svg);
    return ExitCode::done;
}

}  // namespace

ExitCode run_plugin_list(const services::Workplace& workplace, OutputFormat form, Output& output) {
    output.write(form == OutputFormat::json
                     ? answers::document_text("plugin-list", answers::plugin_list_json(workplace.engine.graph()))
                     : render::to_text(reports::plugin_list_report(workplace.engine.graph())));
    return ExitCode::done;
}

ExitCode run_plugin_graph(const services::Workplace& workplace, PluginGraphCommand::As as, Output& output) {
    switch (as) {
        case PluginGraphCommand::As::json:
            output.write(answers::document_text("plugin-graph",
                                                answers::plugin_graph_json(workplace.plant, workplace.engine.graph())));
            break;
        case PluginGraphCommand::As::dot:
            output.write(reports::plugin_graph_dot(workplace.plant, workplace.engine.graph()));
            break;
        case PluginGraphCommand::As::svg:
            return draw_graph(workplace, output);
        case PluginGraphCommand::As::text:
            output.write(render::to_text(reports::plugin_graph_report(workplace.plant, workplace.engine.graph())));
            break;
    }
    return ExitCode::done;
}

}  // namespace flutebook::cli
