// `plugin check FILE`: tests a plugin against every rule; text for its author, JSON or JUnit's XML for programs.
#include <fmt/format.h>

#include "host/cli/commands.hpp"
#include "host/plant_answers/plugin_json.hpp"
#include "host/plant_reports/check_report.hpp"
#include "host/render/text_report.hpp"
#include "host/services/plugins/inspect_plugin.hpp"

namespace flutebook::cli {

namespace {

constexpr std::int64_t usual_orders = 1000, most_orders = 1'000'000;

constexpr const char* check_footer =
    R"(Loads the plugin in a separate process and tests it against every rule: its file, what loading it
changes, its description, its settings, its results for random orders, and whether everything it
declares is used. No plant is needed. Each broken rule is listed with the command that repeats it.

Exit code: 0 every rule holds; 1 a rule is broken; 2 wrong usage; 3 there is no such file.

Examples:
  flutebook plugin check varnish/build/varnish.so
  flutebook plugin check plugins/varnish.so --seed 7 --orders 20000
  flutebook plugin check plugins/varnish.so --junit > varnish.xml)";

struct CheckCommand {
    std::string file;
    std::int64_t seed = 1, orders = usual_orders;
    bool is_json = false, is_junit = false;
};

std::string findings(const plant_answers::Checked& checked, const CheckCommand& asked) {
    if (asked.is_json) return plant_answers::check_document(checked);
    if (asked.is_junit) return plant_reports::check_junit(checked);
    return render::to_text(plant_reports::check_report(checked));
}

ExitCode check_plugin(const CheckCommand& asked, const RunContext& context) {
    const bool is_watched = is_terminal_error();
    const auto begun = [&](const std::string& rule) {
        if (is_watched) show_progress("trying " + rule);
    };
    const plant_answers::Checked checked = services::check_plugin(
        {asked.file, static_cast<std::uint64_t>(asked.seed), static_cast<std::size_t>(asked.orders)}, begun);
    if (is_watched) show_progress("");
    context.output.write(findings(checked, asked));
    return checked.has_passed() ? ExitCode::done : ExitCode::refused;
}

}  // namespace

void add_plugin_check(Command& plugin) {
    Command& command = plugin.add("check", "test a plugin against every rule", check_footer);
    const auto asked = std::make_shared<CheckCommand>();
    command.json_flag(asked->is_json);
    command.argument("FILE", "a plugin", read_text(asked->file));
    command.option("--seed", "N", "seed of the random orders (default: 1)",
                   read_whole_number({"seed", 0}, asked->seed));
    command.option("--orders", "N", fmt::format("number of random orders (default: {})", usual_orders).c_str(),
                   read_whole_number({"number of orders", 1, most_orders}, asked->orders));
    command.flag("--junit", "answer in JUnit's XML, for build servers", asked->is_junit, {"--json"});
    command.run_with([asked](const RunContext& context) { return check_plugin(*asked, context); });
}

}  // namespace flutebook::cli
