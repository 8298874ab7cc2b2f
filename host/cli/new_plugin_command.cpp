#include "host/cli/new_plugin_command.hpp"

#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "host/answers/json_text.hpp"
#include "host/services/plugins/new_plugin.hpp"

namespace flutebook::cli {

namespace {

// As a shell takes it for one word.
std::string quoted(const std::string& text) {
    std::string result = "'";
    for (const char c : text) result += c == '\'' ? std::string("'\\''") : std::string(1, c);
    return result + "'";
}

std::string text(const std::string& name, const answers::NewPlugin& result) {
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

}  // namespace

ExitCode run_plugin_new(const PluginNewCommand& asked, Output& output) {
    const answers::NewPlugin result = services::new_plugin(asked.name);
    if (asked.form == OutputFormat::json)
        output.write(answers::document_text(
            "new-plugin", answers::Json{{"folder", asked.name}, {"files", result.files}, {"prefix", result.prefix}}));
    else
        output.write(text(asked.name, result));
    return ExitCode::done;
}

}  // namespace flutebook::cli
