// The one file that touches CLI11: its header is heavy, and its words are not ours.
#include "host/cli/arguments.hpp"

#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <algorithm>

#include "host/base/date.hpp"
#include "host/base/near_spellings.hpp"
#include "host/base/quoted_text.hpp"
#include "host/cli/argument_words.hpp"
#include "host/cli/examples.hpp"

namespace flutebook::cli {

namespace {

constexpr const char* group = "Commands";

// The commands as the library knows them. Not to be copied: options point into `words`.
class CommandLine {
public:
    CommandLine() : app_("Flutebook: what a corrugated box costs, and where its paper went.", "flutebook") {
        app_.get_formatter()->column_width(28);  // first: commands take it over when they are added
        app_.get_formatter()->label("SUBCOMMAND", "COMMAND");
        app_.get_formatter()->label("Positionals", "Files");
        app_.get_formatter()->label("REQUIRED", "");
        app_.set_version_flag("--version", "flutebook " FLUTEBOOK_VERSION, "show the version and end");
        app_.add_option("--plant", words_.plant, "folder of the plant's files (default: .)")->type_name("DIR");
        app_.add_option("--ledger", words_.ledger, "the ledger's file (default: ledger.db in the plant's folder)")
            ->type_name("FILE");
        app_.require_subcommand(1);
        app_.fallthrough();
        app_.footer(examples::of_all);
        add_quote();
        add_order();
        add_post();
        add_month();
        add_close();
        add_reverse();
        add_verify();
        add_backup();
        plugin_ = app_.add_subcommand("plugin", "look at the cost models")->group(group);
        plugin_->require_subcommand(1);
        plugin_->footer(examples::of_plugin);
        list_ = add_plugin_command("list", "the models that are loaded", examples::of_list);
        add_graph();
        add_describe();
        add_check();
        add_facts();
        new_ = add_plugin_command("new", "start a plugin in a folder of its own", examples::of_new);
        new_->add_option("NAME", words_.plugin_name, "what the model is to be called")->type_name("")->required();
        for (CLI::App* command : {&app_, quote_, show_, recheck_, order_, cost_, post_, month_, close_, reverse_,
                                  verify_, backup_, plugin_, list_, graph_, describe_, check_, facts_, new_})
            command->set_help_flag("-h,--help", "show this help and end");
    }
    CommandLine(const CommandLine&) = delete;
    CommandLine& operator=(const CommandLine&) = delete;

    std::variant<Arguments, UsageReply> read(int count, const char* const* given) {
        try {
            app_.parse(count, given);
        } catch (const CLI::CallForVersion& version) {
            return UsageReply{std::string(version.what()) + "\n", {}, ExitCode::done};
        } catch (const CLI::CallForHelp&) {
            return UsageReply{innermost().help(name_of(innermost().get_parent())), {}, ExitCode::done};
        } catch (const CLI::ParseError& error) {
            return UsageReply{"", {misused(error)}, ExitCode::misused};
        }
        if (const std::string what = missing(); !what.empty()) return UsageReply{"", {what}, ExitCode::misused};
        if (const auto wrong = wrong_for_saved()) return UsageReply{"", {*wrong}, ExitCode::misused};
        return asked();
    }

private:
    // What a command takes itself, but not the commands below it.
    std::string missing() const {
        if (quote_->parsed() && quote_->get_subcommands().empty() && words_.files.empty())
            return "flutebook quote: FILE is required; see `flutebook quote --help`";
        if (!order_->parsed() || cost_->parsed()) return "";
        for (const char* word : {"QUOTE", "QUANTITY"})
            if (order_->count(word) == 0)
                return fmt::format("flutebook order: {} is required; see `flutebook order --help`", word);
        return "";
    }

    void add_quote() {
        quote_ = app_.add_subcommand("quote", "cost requests, each at each of its quantities")->group(group);
        quote_->add_option("FILE", words_.files, "request files")->type_name("");
        quote_->add_option("--explain", words_.explain, "walk this cost line down to what it is made of")
            ->type_name("LINE");
        quote_->add_option("--date", words_.date, "take the prices of this day, not of the request's own")
            ->type_name("YYYY-MM-DD")
            ->check(wrong_date);
        add_threads(quote_);
        quote_->add_flag("--save", words_.save, "keep each quote in the ledger, with all it stands on");
        quote_->add_flag("--json", words_.json, "answer in JSON, for scripts");
        add_html(quote_);
        quote_->footer(examples::of_quote);
        show_ = quote_->add_subcommand("show", "a saved quote as it was")->group(group);
        show_->add_option("QUOTE", words_.quote, "its number, like Q000001")->type_name("")->required();
        show_->add_flag("--json", words_.json, "as it was answered in JSON");
        show_->footer(examples::of_show);
        recheck_ = quote_->add_subcommand("recheck", "a saved quote worked out again today, each difference named");
        recheck_->group(group);
        recheck_->add_option("QUOTE", words_.quote, "its number, like Q000001")->type_name("")->required();
        add_threads(recheck_);
        recheck_->add_flag("--json", words_.json, "answer in JSON, for scripts");
        recheck_->footer(examples::of_recheck);
    }

    void add_threads(CLI::App* command) {
        command->add_option("--threads", words_.threads, "work on so many at once; the answer is the same")
            ->type_name("N")
            ->check(wrong_threads);
    }

    void add_order() {
        order_ = add_ledger_command("order", "take a saved quote as an order", examples::of_order);
        // Required, but not of the commands below it: see missing().
        order_->add_option("QUOTE", words_.quote, "the quote's number, like Q000001")->type_name("");
        order_->add_option("QUANTITY", words_.quantity, "one of the quantities it holds")->type_name("");
        order_->add_option("--as", words_.order, "the plant's own number of the order")->type_name("NUMBER");
        cost_ = order_->add_subcommand("cost", "quoted against actual, once it is made")->group(group);
        cost_->add_option("NUMBER", words_.order, "the plant's own number of the order")->type_name("")->required();
        cost_->add_flag("--json", words_.json, "answer in JSON, for scripts");
        cost_->footer(examples::of_order_cost);
    }

    CLI::App* add_ledger_command(const std::string& name, const std::string& what, const char* examples) {
        CLI::App* command = app_.add_subcommand(name, what)->group(group);
        command->add_flag("--json", words_.json, "answer in JSON, for scripts");
        command->footer(examples);
        return command;
    }

    void add_month_name(CLI::App* command) {
        command->add_option("YYYY-MM", words_.month, "the month")->type_name("")->required()->check(wrong_month);
    }

    void add_post() {
        post_ = add_ledger_command("post", "production documents into the ledger", examples::of_post);
        post_->add_option("FILE", words_.files, "documents, CSV")->type_name("")->required();
        post_->add_flag("--dry-run", words_.dry_run, "say what would be posted, and keep nothing");
    }

    void add_month() {
        month_ = add_ledger_command("month", "the account of a month", examples::of_month);
        add_month_name(month_);
        month_->add_option("--by", words_.by, "divide it by machine, shift, board or order")
            ->type_name("WHAT")
            ->check(wrong_axis);
        month_->add_option("--export", words_.export_file, "also write it to this file, .xlsx or .csv")
            ->type_name("FILE")
            ->check(wrong_export);
        add_html(month_);
    }

    void add_html(CLI::App* command) {
        command
            ->add_option("--html", words_.html_file, "write the answer as a page to this file, .html, in place of text")
            ->type_name("FILE")
            ->check(wrong_html);
    }

    void add_close() {
        close_ = add_ledger_command("close", "seal a month for good", examples::of_close);
        add_month_name(close_);
        close_->add_option("--why", words_.why, "why it is closed though it does not balance")->type_name("TEXT");
    }

    void add_reverse() {
        reverse_ = add_ledger_command("reverse", "undo an entry by its mirror", examples::of_reverse);
        reverse_->add_option("ENTRY", words_.entry, "the entry's number")
            ->type_name("")
            ->required()
            ->check(wrong_entry);
        reverse_->add_option("--why", words_.why, "the reason, kept with it")->type_name("TEXT")->required();
        reverse_->add_option("--date", words_.date, "the day it is dated, in an open month")
            ->type_name("YYYY-MM-DD")
            ->check(wrong_date);
    }

    void add_verify() {
        verify_ = add_ledger_command("verify", "prove the ledger whole", examples::of_verify);
        verify_->add_option("--head", words_.head, "a head that was kept elsewhere")->type_name("HEX");
    }

    void add_backup() {
        backup_ = add_ledger_command("backup", "copy the ledger while it is in use", examples::of_backup);
        backup_->add_option("FILE", words_.backup_file, "the copy")->type_name("")->required();
    }

    CLI::App* add_plugin_command(const std::string& name, const std::string& what, const char* examples) {
        CLI::App* command = plugin_->add_subcommand(name, what)->group(group);
        command->add_flag("--json", words_.json, "answer in JSON, for scripts");
        command->footer(examples);
        return command;
    }

    void add_graph() {
        graph_ = add_plugin_command("graph", "who feeds whom", examples::of_graph);
        graph_->add_flag("--dot", words_.dot, "answer in the language of Graphviz")->excludes("--json");
        graph_->add_flag("--svg", words_.svg, "answer with the drawing, by Graphviz")->excludes("--json", "--dot");
    }

    void add_describe() {
        describe_ = add_plugin_command("describe", "what a plugin says of itself", examples::of_describe);
        describe_->add_option("FILE", words_.plugin_file, "a plugin")->type_name("")->required();
        describe_->add_flag("--markdown", words_.markdown, "answer with a page about it")->excludes("--json");
        describe_->add_flag("--yaml", words_.yaml, "answer with its entry for plugins.yaml, every default in it")
            ->excludes("--json", "--markdown");
    }

    void add_check() {
        check_ = add_plugin_command("check", "try a plugin by every rule", examples::of_check);
        check_->add_option("FILE", words_.plugin_file, "a plugin")->type_name("")->required();
        check_->add_option("--seed", words_.seed, "what orders are made from (default: 1)")
            ->type_name("N")
            ->check(wrong_seed);
        check_->add_option("--orders", words_.orders, fmt::format("how many at random (default: {})", words_.orders))
            ->type_name("N")
            ->check(wrong_orders);
        check_->add_flag("--junit", words_.junit, "answer in JUnit's XML, for build servers")->excludes("--json");
    }

    void add_facts() {
        facts_ = add_plugin_command("facts", "what the host gives to every model", examples::of_facts);
        facts_->add_flag("--markdown", words_.markdown, "answer with a page about it")->excludes("--json");
    }

    const CLI::App& innermost() const {
        const CLI::App* command = &app_;
        for (auto under = command->get_subcommands(); !under.empty(); under = command->get_subcommands())
            command = under.front();
        return *command;
    }

    // "flutebook plugin": a command as it was typed; above the first there is nothing.
    static std::string name_of(const CLI::App* command) {
        if (command == nullptr) return "";
        const std::string above = name_of(command->get_parent());
        return above.empty() ? command->get_name() : above + " " + command->get_name();
    }

    std::string wrong_command(const CLI::App& command) const {
        const std::vector<std::string> left = app_.remaining(true);
        if (left.empty()) return "a command is missing";
        if (left.front().rfind('-', 0) == 0) return fmt::format("no such option: {}", base::shown(left.front()));
        std::vector<std::string> known;
        for (const CLI::App* app : command.get_subcommands([](const CLI::App*) { return true; }))
            known.push_back(app->get_name());
        return fmt::format("no such command: {}{}", base::shown(left.front()), base::did_you_mean(left.front(), known));
    }

    // The library says which option it is about before a colon.
    static std::string wrong_count(const std::string& said) {
        const std::string option = said.substr(0, said.find(':'));
        const bool is_repeated = said.find("At Most") != std::string::npos;
        return option + (is_repeated ? ": is given more than once" : ": has no value");
    }

    // One sentence: where, what, what to do.
    std::string misused(const CLI::ParseError& error) const {
        const CLI::App& command = innermost();
        const std::string name = name_of(&command);
        std::string what = cleaned_words(error.what());
        if (dynamic_cast<const CLI::ArgumentMismatch*>(&error) != nullptr)
            what = wrong_count(error.what());
        else if (command.get_require_subcommand_min() > 0)
            what = wrong_command(command);
        return fmt::format("{}: {}; see `{} --help`", name, what, name);
    }

    // What is said to `quote` itself means nothing to a command under it, where the library would take it all the same.
    std::optional<std::string> wrong_for_saved() const {
        if (quote_->get_subcommands().empty()) return std::nullopt;
        const std::string name = name_of(quote_->get_subcommands().front());
        std::string found = words_.files.empty() ? "" : base::shown(words_.files.front());
        for (const char* option : {"--explain", "--date", "--save"})
            if (quote_->count(option) > 0) found = option;
        if (found.empty()) return std::nullopt;
        return fmt::format("{}: not for a saved quote: {}; see `{} --help`", name, found, name);
    }

    static std::string cleaned_words(std::string text) {
        std::replace(text.begin(), text.end(), '\n', ' ');
        if (!text.empty() && text[0] >= 'A' && text[0] <= 'Z' && (text.size() < 2 || text[1] > 'Z'))
            text[0] = static_cast<char>(text[0] - 'A' + 'a');
        return text;
    }

    Arguments asked() const {
        const std::string& ledger = words_.ledger;
        return {words_.plant, ledger.empty() ? words_.plant + "/ledger.db" : ledger, command()};
    }

    Arguments::Command command() const {
        const Words& words = words_;
        if (list_->parsed()) return PluginListCommand{words.form()};
        if (graph_->parsed()) return PluginGraphCommand{words.graph_form()};
        if (describe_->parsed()) return PluginDescribeCommand{words.plugin_file, words.description_form()};
        if (check_->parsed())
            return PluginCheckCommand{words.plugin_file, words.seed, words.orders, words.check_form()};
        if (facts_->parsed()) return PluginFactsCommand{words.facts_form()};
        if (new_->parsed()) return PluginNewCommand{words.plugin_name, words.form()};
        if (show_->parsed()) return QuoteShowCommand{words.quote, words.form()};
        if (recheck_->parsed()) return QuoteRecheckCommand{words.quote, words.threads, words.form()};
        if (cost_->parsed()) return OrderCostCommand{words.order, words.form()};
        if (order_->parsed())
            return OrderCommand{words.quote, static_cast<double>(words.quantity), words.order, words.form()};
        if (post_->parsed()) return PostCommand{words.files, words.keep(), words.form()};
        if (month_->parsed())
            return MonthCommand{parse_month(words.month).value(), find_axis(words.by), words.export_file,
                                words.html_file, words.form()};
        if (close_->parsed()) return CloseCommand{parse_month(words.month).value(), words.why, words.form()};
        if (reverse_->parsed())
            return ReverseCommand{words.entry, words.why, base::parse_date(words.date), words.form()};
        if (verify_->parsed()) return VerifyCommand{given(verify_, "--head", words.head), words.form()};
        if (backup_->parsed()) return BackupCommand{words.backup_file, words.form()};
        return QuoteCommand{words.files,
                            words.keep_quotes(),
                            given(quote_, "--explain", words.explain),
                            base::parse_date(words.date),
                            words.threads,
                            words.html_file,
                            words.form()};
    }

    static std::optional<std::string> given(const CLI::App* command, const char* option, const std::string& value) {
        return command->count(option) > 0 ? std::optional(value) : std::nullopt;
    }

    Words words_;
    CLI::App app_;
    CLI::App *quote_ = nullptr, *show_ = nullptr, *recheck_ = nullptr, *order_ = nullptr, *cost_ = nullptr,
             *post_ = nullptr, *plugin_ = nullptr, *list_ = nullptr, *graph_ = nullptr, *describe_ = nullptr,
             *facts_ = nullptr, *check_ = nullptr, *new_ = nullptr, *month_ = nullptr, *close_ = nullptr,
             *reverse_ = nullptr, *verify_ = nullptr, *backup_ = nullptr;
};

}  // namespace

std::variant<Arguments, UsageReply> read_arguments(int count, const char* const* words) {
    return CommandLine().read(count, words);
}

}  // namespace flutebook::cli
