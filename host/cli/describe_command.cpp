#include "host/cli/describe_command.hpp"

#include <nlohmann/json.hpp>

#include "host/answers/describe_json.hpp"
#include "host/answers/json_text.hpp"
#include "host/render/markdown_report.hpp"
#include "host/render/text_report.hpp"
#include "host/reports/describe_report.hpp"
#include "host/services/plugins/describe.hpp"

namespace flutebook::cli {

namespace {

std::string in_form(const answers::DescribedModel& described, PluginDescribeCommand::As form) {
    switch (form) {
        case PluginDescribeCommand::As::markdown:
            return render::to_markdown(reports::describe_report(described, reports::DescribeScope::model));
        case PluginDescribeCommand::As::yaml:
            return reports::describe_yaml(described);
        case PluginDescribeCommand::As::json:
            return answers::document_text("plugin", answers::describe_json(described));
        case PluginDescribeCommand::As::text:
            break;
    }
    return render::to_text(reports::describe_report(described, reports::DescribeScope::file));
}

}  // namespace

ExitCode run_plugin_describe(const PluginDescribeCommand& asked, Output& output) {
    output.write(in_form(services::describe(asked.file), asked.as));
    return ExitCode::done;
}

}  // namespace flutebook::cli
