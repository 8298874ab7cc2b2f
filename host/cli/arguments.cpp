// The one file that touches CLI11: its header is heavy, and its words are not ours.
#include "host/cli/arguments.hpp"

#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <thread>

#include "host/catalogue/date.hpp"
#include "host/catalogue/nearest.hpp"
#include "host/catalogue/shown.hpp"

namespace flutebook::cli {

namespace {

constexpr unsigned most_threads = 256;
constexpr const char* group = "Commands";

// What the library fills in.
struct Words {
    std::string plant = ".";
    std::vector<std::string> files;
    std::string explain, date, plugin_file, plugin_name;
    unsigned threads = std::clamp(std::thread::hardware_concurrency(), 1U, most_threads);
    bool json = false, dot = false, svg = false, markdown = false, yaml = false;

    [[nodiscard]] Form form() const { return json ? Form::json : Form::text; }
    [[nodiscard]] PluginGraphCommand::As graph_form() const {
        using As = PluginGraphCommand::As;
        if (json) return As::json;
        if (dot) return As::dot;
        return svg ? As::svg : As::text;
    }
    [[nodiscard]] PluginDescribeCommand::As description_form() const {
        using As = PluginDescribeCommand::As;
        if (json) return As::json;
        if (markdown) return As::markdown;
        return yaml ? As::yaml : As::text;
    }
};

std::string wrong_date(const std::string& text) {
    if (catalogue::parse_date(text)) return {};
    return fmt::format("is no day: {}; write YYYY-MM-DD", catalogue::shown(text));
}

std::string wrong_threads(const std::string& text) {
    unsigned number = 0;
    if (CLI::detail::lexical_cast(text, number) && number >= 1 && number <= most_threads) return {};
    return fmt::format("is no number of threads: {}; give a whole number from 1 to {}", catalogue::shown(text),
                       most_threads);
}

constexpr const char* quote_examples =
    R"(What it costs to make each request at each of its quantities: the price ladder, then a cost sheet
for each quantity, made the cheapest way that the plant has.

Exit code: 0 done; 1 a request was refused or a quantity cannot be made, everything else is in the
answer; 2 wrong usage; 3 the plant's files or a plugin are not fit.

Examples:
  flutebook --plant config/demo quote config/demo/requests/R-1001-everyday-box.yaml
  flutebook quote requests/*.yaml --json > prices.json
  flutebook quote R-1001.yaml --explain energy.heat
  flutebook quote R-1001.yaml --date 2026-12-01)";

constexpr const char* list_examples = R"(Examples:
  flutebook --plant config/demo plugin list
  flutebook plugin list --json)";

constexpr const char* graph_examples =
    R"(Models stand in the order they are evaluated. Each name is followed by its unit, and by `step` or
`ply` where there is one number for each.

Examples:
  flutebook --plant config/demo plugin graph
  flutebook plugin graph --json
  flutebook plugin graph --svg > models.svg)";

constexpr const char* describe_examples =
    R"(A plugin's own account of itself, read from its file: no plant is needed.

Examples:
  flutebook plugin describe plugins/varnish.so
  flutebook plugin describe plugins/varnish.so --yaml >> plugins.yaml)";

constexpr const char* new_examples =
    R"(Makes the folder NAME here: a plugin that works, its build, a golden order and a page about both.

Examples:
  flutebook plugin new varnish)";

constexpr const char* plugin_examples = R"(Examples:
  flutebook plugin list
  flutebook plugin graph
  flutebook plugin describe plugins/varnish.so
  flutebook plugin new varnish)";

constexpr const char* all_examples = R"(Examples:
  flutebook --plant config/demo quote config/demo/requests/R-1001-everyday-box.yaml
  flutebook --plant config/demo plugin graph
  flutebook quote --help)";

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
        app_.require_subcommand(1);
        app_.fallthrough();
        app_.footer(all_examples);
        add_quote();
        plugin_ = app_.add_subcommand("plugin", "look at the cost models")->group(group);
        plugin_->require_subcommand(1);
        plugin_->footer(plugin_examples);
        list_ = add_plugin_command("list", "the models that are loaded", list_examples);
        add_graph();
        add_describe();
        new_ = add_plugin_command("new", "start a plugin in a folder of its own", new_examples);
        new_->add_option("NAME", words_.plugin_name, "what the model is to be called")->type_name("")->required();
        for (CLI::App* command : {&app_, quote_, plugin_, list_, graph_, describe_, new_})
            command->set_help_flag("-h,--help", "show this help and end");
    }
    CommandLine(const CommandLine&) = delete;
    CommandLine& operator=(const CommandLine&) = delete;

    std::variant<Arguments, Spoken> read(int count, const char* const* given) {
        try {
            app_.parse(count, given);
        } catch (const CLI::CallForVersion& version) {
            return Spoken{std::string(version.what()) + "\n", {}, ExitCode::done};
        } catch (const CLI::CallForHelp&) {
            return Spoken{innermost().help(name_of(innermost().get_parent())), {}, ExitCode::done};
        } catch (const CLI::ParseError& error) {
            return Spoken{"", {misused(error)}, ExitCode::misused};
        }
        return asked();
    }

private:
    void add_quote() {
        quote_ = app_.add_subcommand("quote", "cost requests, each at each of its quantities")->group(group);
        quote_->add_option("FILE", words_.files, "request files")->type_name("")->required();
        quote_->add_option("--explain", words_.explain, "walk this cost line down to what it is made of")
            ->type_name("LINE");
        quote_->add_option("--date", words_.date, "take the prices of this day, not of the request's own")
            ->type_name("YYYY-MM-DD")
            ->check(wrong_date);
        quote_->add_option("--threads", words_.threads, "work on so many at once; the answer is the same")
            ->type_name("N")
            ->check(wrong_threads);
        quote_->add_flag("--json", words_.json, "answer in JSON, for scripts");
        quote_->footer(quote_examples);
    }

    CLI::App* add_plugin_command(const std::string& name, const std::string& what, const char* examples) {
        CLI::App* command = plugin_->add_subcommand(name, what)->group(group);
        command->add_flag("--json", words_.json, "answer in JSON, for scripts");
        command->footer(examples);
        return command;
    }

    void add_graph() {
        graph_ = add_plugin_command("graph", "who feeds whom", graph_examples);
        graph_->add_flag("--dot", words_.dot, "answer in the language of Graphviz")->excludes("--json");
        graph_->add_flag("--svg", words_.svg, "answer with the drawing, by Graphviz")->excludes("--json", "--dot");
    }

    void add_describe() {
        describe_ = add_plugin_command("describe", "what a plugin says of itself", describe_examples);
        describe_->add_option("FILE", words_.plugin_file, "a plugin")->type_name("")->required();
        describe_->add_flag("--markdown", words_.markdown, "answer with a page about it")->excludes("--json");
        describe_->add_flag("--yaml", words_.yaml, "answer with its entry for plugins.yaml, every default in it")
            ->excludes("--json", "--markdown");
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
        if (left.front().rfind('-', 0) == 0) return fmt::format("no such option: {}", catalogue::shown(left.front()));
        std::vector<std::string> known;
        for (const CLI::App* own : command.get_subcommands([](const CLI::App*) { return true; }))
            known.push_back(own->get_name());
        return fmt::format("no such command: {}{}", catalogue::shown(left.front()),
                           catalogue::did_you_mean(left.front(), known));
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
        else if (!command.get_subcommands([](const CLI::App*) { return true; }).empty())
            what = wrong_command(command);
        return fmt::format("{}: {}; see `{} --help`", name, what, name);
    }

    static std::string cleaned_words(std::string text) {
        std::replace(text.begin(), text.end(), '\n', ' ');
        if (!text.empty() && text[0] >= 'A' && text[0] <= 'Z' && (text.size() < 2 || text[1] > 'Z'))
            text[0] = static_cast<char>(text[0] - 'A' + 'a');
        return text;
    }

    Arguments asked() const {
        const Words& own = words_;
        if (list_->parsed()) return {own.plant, PluginListCommand{own.form()}};
        if (graph_->parsed()) return {own.plant, PluginGraphCommand{own.graph_form()}};
        if (describe_->parsed()) return {own.plant, PluginDescribeCommand{own.plugin_file, own.description_form()}};
        if (new_->parsed()) return {own.plant, PluginNewCommand{own.plugin_name, own.form()}};
        QuoteCommand quote{own.files, std::nullopt, std::nullopt, own.threads, own.form()};
        if (quote_->count("--explain") > 0) quote.explain = own.explain;
        if (quote_->count("--date") > 0) quote.date = catalogue::parse_date(own.date);
        return {own.plant, std::move(quote)};
    }

    Words words_;
    CLI::App app_;
    CLI::App *quote_ = nullptr, *plugin_ = nullptr, *list_ = nullptr, *graph_ = nullptr, *describe_ = nullptr,
             *new_ = nullptr;
};

}  // namespace

std::variant<Arguments, Spoken> read_arguments(int count, const char* const* words) {
    return CommandLine().read(count, words);
}

}  // namespace flutebook::cli
