#include "host/cli/describe_command.hpp"

#include <nlohmann/json.hpp>

#include "host/cli/describe_json.hpp"
#include "host/cli/describe_markdown.hpp"
#include "host/cli/describe_text.hpp"
#include "host/cli/describe_yaml.hpp"
#include "host/cli/json_text.hpp"
#include "host/desk/describe.hpp"

namespace flutebook::cli {

namespace {

std::string in_form(const desk::Description& described, PluginDescribeCommand::As form) {
    switch (form) {
        case PluginDescribeCommand::As::markdown:
            return describe_markdown(described);
        case PluginDescribeCommand::As::yaml:
            return describe_yaml(described);
        case PluginDescribeCommand::As::json:
            return json_text(describe_json(described));
        case PluginDescribeCommand::As::text:
            break;
    }
    return describe_text(described);
}

}  // namespace

ExitCode run_plugin_describe(const PluginDescribeCommand& asked, Output& output) {
    output.write(in_form(desk::describe(asked.file), asked.as));
    return ExitCode::done;
}

}  // namespace flutebook::cli
