#include "host/cli/check_command.hpp"

#include <nlohmann/json.hpp>

#include "host/answers/check_json.hpp"
#include "host/answers/json_text.hpp"
#include "host/render/text_report.hpp"
#include "host/reports/check_report.hpp"
#include "host/services/plugins/check_plugin.hpp"

namespace flutebook::cli {

namespace {

std::string in_form(const answers::Checked& checked, PluginCheckCommand::As form) {
    switch (form) {
        case PluginCheckCommand::As::json:
            return answers::document_text("plugin-check", answers::check_json(checked));
        case PluginCheckCommand::As::junit:
            return reports::check_junit(checked);
        case PluginCheckCommand::As::text:
            break;
    }
    return render::to_text(reports::check_report(checked));
}

}  // namespace

ExitCode run_plugin_check(const PluginCheckCommand& asked, Output& output) {
    const bool is_watched = is_terminal_error();
    const auto begun = [&](const std::string& rule) {
        if (is_watched) show_progress("trying " + rule);
    };
    const answers::Checked checked = services::check_plugin({asked.file, asked.seed, asked.orders}, begun);
    if (is_watched) show_progress("");
    output.write(in_form(checked, asked.as));
    return checked.has_passed() ? ExitCode::done : ExitCode::refused;
}

}  // namespace flutebook::cli
