// `plugin new NAME`: creates a plugin, and prints what to do with it.
#include <fmt/format.h>

#include "host/cli/commands.hpp"
#include "host/plant_answers/plugin_json.hpp"
#include "host/services/plugins/new_plugin.hpp"

namespace flutebook::cli {

namespace {

constexpr const char* new_plugin_footer =
    R"(Creates the folder NAME here: a working plugin, its build, a golden order and a page about both.

Examples:
  flutebook plugin new varnish)";

struct NewPluginCommand {
    std::string name;
    bool is_json = false;
};

// Quoted as one word for a shell.
std::string quoted(const std::string& text) {
    std::string result = "'";
    for (const char c : text) result += c == '\'' ? std::string("'\\''") : std::string(1, c);
    return result + "'";
}

std::string new_plugin_text(const std::string& name, const plant_answers::NewPlugin& plugin) {
    std::string text = fmt::format("{}/ holds a plugin that works; {}.cpp is where to begin.\n\n", name, name);
    for (const std::string& file : plugin.files) text += fmt::format("  {}/{}\n", name, file);
    text += fmt::format(
        "\nBuild it, and try it on its golden order:\n"
        "  cmake -S {0} -B {0}/build -DCMAKE_PREFIX_PATH={1}\n"
        "  cmake --build {0}/build\n"
        "  ctest --test-dir {0}/build\n"
        "Put it into a plant, whose plugins.yaml then lists it:\n"
        "  cmake --install {0}/build --prefix PLANT\n",
        name, quoted(plugin.prefix));
    return text;
}

ExitCode start_plugin(const NewPluginCommand& asked, const RunContext& context) {
    const plant_answers::NewPlugin plugin = services::new_plugin(asked.name);
    context.output.write(asked.is_json ? plant_answers::new_plugin_document(asked.name, plugin)
                                       : new_plugin_text(asked.name, plugin));
    return ExitCode::done;
}

}  // namespace

void add_plugin_new(Command& plugin) {
    Command& command = plugin.add("new", "create a plugin in a new folder", new_plugin_footer);
    const auto asked = std::make_shared<NewPluginCommand>();
    command.json_flag(asked->is_json);
    command.argument("NAME", "the name of the model", read_line(asked->name));
    command.run_with([asked](const RunContext& context) { return start_plugin(*asked, context); });
}

}  // namespace flutebook::cli
