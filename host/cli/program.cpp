#include "host/cli/program.hpp"

#include "host/cli/arguments.hpp"
#include "host/cli/output.hpp"
#include "host/cli/plugin_command.hpp"
#include "host/cli/quote_command.hpp"
#include "host/desk/workplace.hpp"

namespace flutebook::cli {

namespace {

// Runs whichever command was asked.
struct Worker {
    const desk::Workplace& workplace;
    Output& output;

    ExitCode operator()(const QuoteCommand& asked) const { return run_quote(workplace, asked, output); }
    ExitCode operator()(const PluginListCommand& asked) const { return run_plugin_list(workplace, asked.form, output); }
    ExitCode operator()(const PluginGraphCommand& asked) const {
        return run_plugin_graph(workplace, asked.form, output);
    }
};

}  // namespace

int run(int count, const char* const* words) {
    prepare_streams();
    Output output;
    ExitCode worst = ExitCode::done;
    const auto asked = read_arguments(count, words);
    if (const auto* spoken = std::get_if<Spoken>(&asked)) {
        output.write(spoken->answer);
        complain(spoken->complaints);
        worst = spoken->exit_code;
    } else {
        const auto& arguments = std::get<Arguments>(asked);
        const desk::Workplace workplace = desk::open(arguments.plant);
        worst = std::visit(Worker{workplace, output}, arguments.command);
    }
    return static_cast<int>(worse(worst, output.close()));
}

}  // namespace flutebook::cli
