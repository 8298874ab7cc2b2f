#include "host/cli/commands.hpp"

#include "host/services/plugins/child_process_main.hpp"

namespace flutebook::cli {

namespace {

constexpr const char* program_footer = R"(Examples:
  flutebook --plant config/demo quote config/demo/requests/R-1001-everyday-box.yaml
  flutebook --plant config/demo plugin graph
  flutebook quote --help)";

// Help lists them in this order.
void add_commands(Command& program) {
    add_quote(program);
    add_order(program);
    add_post(program);
    add_month(program);
    add_close(program);
    add_reverse(program);
    add_entries(program);
    add_verify(program);
    add_backup(program);
    add_style(program);
    add_plugin(program);
    add_serve(program);
    add_user(program);
}

}  // namespace

int run(int count, const char* const* words) {
    // The program starts itself as a child process to work with a plugin.
    if (const auto child_code = services::run_inside(count, words)) return *child_code;
    prepare_streams();
    Output output;
    CommandLine command_line("flutebook", "Flutebook: what a corrugated box costs, and where its paper went.",
                             program_footer);
    add_commands(command_line.program());
    const ExitCode code = command_line.run(count, words, output);
    return static_cast<int>(worse(code, output.close()));
}

}  // namespace flutebook::cli
