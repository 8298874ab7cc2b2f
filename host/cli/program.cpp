#include "host/cli/program.hpp"

#include "host/cli/arguments.hpp"
#include "host/cli/check_command.hpp"
#include "host/cli/describe_command.hpp"
#include "host/cli/facts_command.hpp"
#include "host/cli/ledger_command.hpp"
#include "host/cli/month_command.hpp"
#include "host/cli/new_plugin_command.hpp"
#include "host/cli/order_command.hpp"
#include "host/cli/order_cost_command.hpp"
#include "host/cli/output.hpp"
#include "host/cli/plugin_command.hpp"
#include "host/cli/post_command.hpp"
#include "host/cli/quote_command.hpp"
#include "host/cli/recheck_command.hpp"
#include "host/services/workplace.hpp"

namespace flutebook::cli {

namespace {

// Runs whichever command was asked. Opens the plant for those that work in one, and for no other.
struct WorkerEntry {
    const std::string& plant;
    const std::string& ledger;
    Output& output;

    ExitCode operator()(const QuoteCommand& asked) const {
        return run_quote(services::open(plant), ledger, asked, output);
    }
    ExitCode operator()(const QuoteShowCommand& asked) const { return run_quote_show(ledger, asked, output); }
    ExitCode operator()(const QuoteRecheckCommand& asked) const {
        return run_quote_recheck(plant, ledger, asked, output);
    }
    ExitCode operator()(const OrderCommand& asked) const { return run_order(ledger, asked, output); }
    ExitCode operator()(const OrderCostCommand& asked) const {
        return run_order_cost(plant::read_plant(plant), ledger, asked, output);
    }
    ExitCode operator()(const PostCommand& asked) const {
        return run_post(plant::read_plant(plant), ledger, asked, output);
    }
    ExitCode operator()(const MonthCommand& asked) const {
        return run_month(plant::read_plant(plant), ledger, asked, output);
    }
    ExitCode operator()(const CloseCommand& asked) const {
        return run_close(plant::read_plant(plant), ledger, asked, output);
    }
    ExitCode operator()(const ReverseCommand& asked) const { return run_reverse(ledger, asked, output); }
    ExitCode operator()(const VerifyCommand& asked) const { return run_verify(ledger, asked, output); }
    ExitCode operator()(const BackupCommand& asked) const { return run_backup(ledger, asked, output); }
    ExitCode operator()(const PluginListCommand& asked) const {
        return run_plugin_list(services::open(plant), asked.form, output);
    }
    ExitCode operator()(const PluginGraphCommand& asked) const {
        return run_plugin_graph(services::open(plant), asked.as, output);
    }
    ExitCode operator()(const PluginDescribeCommand& asked) const { return run_plugin_describe(asked, output); }
    ExitCode operator()(const PluginCheckCommand& asked) const { return run_plugin_check(asked, output); }
    ExitCode operator()(const PluginFactsCommand& asked) const { return run_plugin_facts(asked, output); }
    ExitCode operator()(const PluginNewCommand& asked) const { return run_plugin_new(asked, output); }
};

}  // namespace

int run(int count, const char* const* words) {
    prepare_streams();
    Output output;
    ExitCode worst = ExitCode::done;
    const auto asked = read_arguments(count, words);
    if (const auto* spoken = std::get_if<UsageReply>(&asked)) {
        output.write(spoken->answer);
        complain(spoken->complaints);
        worst = spoken->exit_code;
    } else {
        const auto& arguments = std::get<Arguments>(asked);
        worst = std::visit(WorkerEntry{arguments.plant, arguments.ledger, output}, arguments.command);
    }
    return static_cast<int>(worse(worst, output.close()));
}

}  // namespace flutebook::cli
