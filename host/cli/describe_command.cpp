#include "host/cli/describe_command.hpp"

#include <nlohmann/json.hpp>

#include "host/answers/describe_json.hpp"
#include "host/answers/json_text.hpp"
#include "host/reports/describe_markdown.hpp"
#include "host/reports/describe_text.hpp"
#include "host/reports/describe_yaml.hpp"
#include "host/services/plugins/describe.hpp"

namespace flutebook::cli {

namespace {

std::string in_form(const services::DescribedModel& described, PluginDescribeCommand::As form) {
    switch (form) {
        case PluginDescribeCommand::As::markdown:
            return reports::describe_markdown(described);
        case PluginDescribeCommand::As::yaml:
            return reports::describe_yaml(described);
        case PluginDescribeCommand::As::json:
            return answers::json_text(answers::describe_json(described));
        case PluginDescribeCommand::As::text:
            break;
    }
    return reports::describe_text(described);
}

}  // namespace

ExitCode run_plugin_describe(const PluginDescribeCommand& asked, Output& output) {
    output.write(in_form(services::describe(asked.file), asked.as));
    return ExitCode::done;
}

}  // namespace flutebook::cli
