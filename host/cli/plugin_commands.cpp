// `plugin list`, `graph`, `describe` and `facts`: which models the plant uses, which model takes which number from
// which, how a plugin describes itself, and what the host gives to every model.
#include "host/cli/commands.hpp"
#include "host/plant_answers/plugin_json.hpp"
#include "host/plant_reports/describe_report.hpp"
#include "host/plant_reports/graph_drawing.hpp"
#include "host/render/text_exports.hpp"
#include "host/render/text_report.hpp"
#include "host/services/plugins/files_not_listed.hpp"
#include "host/services/plugins/inspect_plugin.hpp"
#include "host/workplace/workplace.hpp"

namespace flutebook::cli {

namespace {

constexpr const char* plugin_footer = R"(Examples:
  flutebook plugin list
  flutebook plugin graph
  flutebook plugin describe plugins/varnish.so
  flutebook plugin check plugins/varnish.so
  flutebook plugin new varnish)";

constexpr const char* list_footer = R"(Examples:
  flutebook --plant config/demo plugin list
  flutebook plugin list --json)";

constexpr const char* graph_footer =
    R"(Models are listed in the order of their evaluation. Each name is followed by its unit, and by `step`
or `ply` where there is one number for each step or ply.

Examples:
  flutebook --plant config/demo plugin graph
  flutebook plugin graph --json
  flutebook plugin graph --svg > models.svg)";

constexpr const char* describe_footer =
    R"(Prints how a plugin describes itself, read from its file: no plant is needed.

Examples:
  flutebook plugin describe plugins/varnish.so
  flutebook plugin describe plugins/varnish.so --yaml >> plugins.yaml)";

constexpr const char* facts_footer =
    R"(Lists what a model may need besides the numbers of other models: names, units and meanings. Where a
plant prefers a model for a replaceable one, that model's number is used instead.

Examples:
  flutebook plugin facts
  flutebook plugin facts --json)";

struct GraphCommand {
    bool is_json = false, is_dot = false, is_svg = false;
};

struct DescribeCommand {
    std::string file;
    bool is_json = false, is_markdown = false, is_yaml = false;
};

struct FactsCommand {
    bool is_json = false, is_markdown = false;
};

ExitCode list_plugins(bool is_json, const RunContext& context) {
    const workplace::Workplace workplace = workplace::open(context.plant);
    const engine::Graph& graph = workplace.engine.graph();
    const std::vector<std::string> not_listed = services::files_not_listed(workplace.plant);
    warn(workplace.warnings);
    context.output.write(is_json ? plant_answers::plugin_list_document(graph, not_listed)
                                 : render::to_text(plant_reports::plugin_list_report(graph, not_listed)));
    return ExitCode::done;
}

ExitCode draw_graph(const std::string& dot, Output& output) {
    const plant_reports::Drawn drawn = plant_reports::drawn_as_svg(dot);
    if (drawn.svg.empty()) {
        complain({drawn.complaint});
        return ExitCode::refused;
    }
    output.write(drawn.svg);
    return ExitCode::done;
}

ExitCode show_graph(const GraphCommand& asked, const RunContext& context) {
    const workplace::Workplace workplace = workplace::open(context.plant);
    const plant::Plant& plant = workplace.plant;
    const engine::Graph& graph = workplace.engine.graph();
    warn(workplace.warnings);
    if (asked.is_svg) return draw_graph(plant_reports::plugin_graph_dot(plant, graph), context.output);
    if (asked.is_json)
        context.output.write(plant_answers::plugin_graph_document(plant, graph));
    else if (asked.is_dot)
        context.output.write(plant_reports::plugin_graph_dot(plant, graph));
    else
        context.output.write(render::to_text(plant_reports::plugin_graph_report(plant, graph)));
    return ExitCode::done;
}

std::string description(const plant_answers::DescribedModel& described, const DescribeCommand& asked) {
    using plant_reports::DescribeScope;
    if (asked.is_json) return plant_answers::describe_document(described);
    if (asked.is_markdown) return render::to_markdown(plant_reports::describe_report(described, DescribeScope::model));
    if (asked.is_yaml) return plant_reports::describe_yaml(described);
    return render::to_text(plant_reports::describe_report(described, DescribeScope::file));
}

ExitCode show_facts(const FactsCommand& asked, const RunContext& context) {
    if (asked.is_json)
        context.output.write(plant_answers::facts_document());
    else if (asked.is_markdown)
        context.output.write(render::to_markdown(plant_reports::facts_report()));
    else
        context.output.write(render::to_text(plant_reports::facts_report()));
    return ExitCode::done;
}

void add_plugin_list(Command& plugin) {
    Command& command = plugin.add("list", "list the loaded models", list_footer);
    const auto is_json = std::make_shared<bool>(false);
    command.json_flag(*is_json);
    command.run_with([is_json](const RunContext& context) { return list_plugins(*is_json, context); });
}

void add_plugin_graph(Command& plugin) {
    Command& command = plugin.add("graph", "show which model takes which numbers from which", graph_footer);
    const auto asked = std::make_shared<GraphCommand>();
    command.json_flag(asked->is_json);
    command.flag("--dot", "answer in the DOT language of Graphviz", asked->is_dot, {"--json"});
    command.flag("--svg", "answer with a drawing by Graphviz, SVG", asked->is_svg, {"--json", "--dot"});
    command.run_with([asked](const RunContext& context) { return show_graph(*asked, context); });
}

void add_plugin_describe(Command& plugin) {
    Command& command = plugin.add("describe", "show how a plugin describes itself", describe_footer);
    const auto asked = std::make_shared<DescribeCommand>();
    command.json_flag(asked->is_json);
    command.argument("FILE", "a plugin", read_text(asked->file));
    command.flag("--markdown", "answer with a page about it", asked->is_markdown, {"--json"});
    command.flag("--yaml", "answer with its entry for plugins.yaml, with every default", asked->is_yaml,
                 {"--json", "--markdown"});
    command.run_with([asked](const RunContext& context) {
        context.output.write(description(services::describe(asked->file), *asked));
        return ExitCode::done;
    });
}

void add_plugin_facts(Command& plugin) {
    Command& command = plugin.add("facts", "list what the host gives to every model", facts_footer);
    const auto asked = std::make_shared<FactsCommand>();
    command.json_flag(asked->is_json);
    command.flag("--markdown", "answer with a page about it", asked->is_markdown, {"--json"});
    command.run_with([asked](const RunContext& context) { return show_facts(*asked, context); });
}

}  // namespace

// Help lists the commands in this order.
void add_plugin(Command& program) {
    Command& command = program.add("plugin", "inspect the cost models", plugin_footer);
    command.require_subcommand();
    add_plugin_list(command);
    add_plugin_graph(command);
    add_plugin_describe(command);
    add_plugin_check(command);
    add_plugin_facts(command);
    add_plugin_new(command);
}

}  // namespace flutebook::cli
