#include "host/cli/check_command.hpp"

#include <nlohmann/json.hpp>

#include "host/cli/check_json.hpp"
#include "host/cli/check_junit.hpp"
#include "host/cli/check_text.hpp"
#include "host/cli/json_text.hpp"
#include "host/desk/check_plugin.hpp"

namespace flutebook::cli {

namespace {

std::string in_form(const desk::Checked& checked, PluginCheckCommand::As form) {
    switch (form) {
        case PluginCheckCommand::As::json:
            return json_text(check_json(checked));
        case PluginCheckCommand::As::junit:
            return check_junit(checked);
        case PluginCheckCommand::As::text:
            break;
    }
    return check_text(checked);
}

}  // namespace

ExitCode run_plugin_check(const PluginCheckCommand& asked, Output& output) {
    const bool is_watched = is_terminal_error();
    const auto begun = [&](const std::string& rule) {
        if (is_watched) show_progress("trying " + rule);
    };
    const desk::Checked checked = desk::check_plugin({asked.file, asked.seed, asked.orders}, begun);
    if (is_watched) show_progress("");
    output.write(in_form(checked, asked.as));
    return checked.has_passed() ? ExitCode::done : ExitCode::refused;
}

}  // namespace flutebook::cli
