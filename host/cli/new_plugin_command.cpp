// `plugin new NAME`: starts a plugin, and says what to do with it.
#include <fmt/format.h>

#include "host/answers/plugin_json.hpp"
#include "host/cli/commands.hpp"
#include "host/services/plugins/new_plugin.hpp"

namespace flutebook::cli {

namespace {

constexpr const char* new_plugin_footer =
    R"(Makes the folder NAME here: a plugin that works, its build, a golden order and a page about both.

Examples:
  flutebook plugin new varnish)";

struct NewPluginCommand {
    std::string name;
    bool is_json = false;
};

// As a shell takes it for one word.
std::string quoted(const std::string& text) {
    std::string result = "'";
    for (const char c : text) result += c == '\'' ? std::string("'\\''") : std::string(1, c);
    return result + "'";
}

std::string new_plugin_text(const std::string& name, const answers::NewPlugin& result) {
    std::string said = fmt::format("{}/ holds a plugin that works; {}.cpp is where to begin.\n\n", name, name);
    for (const std::string& file : result.files) said += fmt::format("  {}/{}\n", name, file);
    said += fmt::format(
        "\nBuild it, and try it on its golden order:\n"
        "  cmake -S {0} -B {0}/build -DCMAKE_PREFIX_PATH={1}\n"
        "  cmake --build {0}/build\n"
        "  ctest --test-dir {0}/build\n"
        "Put it into a plant, whose plugins.yaml then lists it:\n"
        "  cmake --install {0}/build --prefix PLANT\n",
        name, quoted(result.prefix));
    return said;
}

ExitCode start_plugin(const NewPluginCommand& asked, const RunContext& context) {
    const answers::NewPlugin result = services::new_plugin(asked.name);
    context.output.write(asked.is_json ? answers::new_plugin_document(asked.name, result)
                                       : new_plugin_text(asked.name, result));
    return ExitCode::done;
}

}  // namespace

void add_plugin_new(Command& plugin) {
    Command& command = plugin.add("new", "start a plugin in a folder of its own", new_plugin_footer);
    const auto asked = std::make_shared<NewPluginCommand>();
    command.json_flag(asked->is_json);
    command.argument("NAME", "what the model is to be called", read_text(asked->name));
    command.run_with([asked](const RunContext& context) { return start_plugin(*asked, context); });
}

}  // namespace flutebook::cli
