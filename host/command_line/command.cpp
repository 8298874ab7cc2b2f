// The only file that uses CLI11.
#include "host/command_line/command.hpp"

#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <utility>

#include "host/base/near_spellings.hpp"
#include "host/base/quoted_text.hpp"
#include "host/plant/plant.hpp"
#include "host/render/number_text.hpp"

namespace flutebook::cli {

namespace {

constexpr const char* command_group = "Commands";
constexpr const char* left_out = "?";  // the value of an option that was given without one

// What the library does with words that a reader has kept already.
CLI::callback_t nothing_more() {
    return [](const CLI::results_t&) { return true; };
}

// "flutebook plugin": a command with the commands above it.
std::string name_of(const CLI::App* app) {
    if (app == nullptr) return "";
    const std::string above = name_of(app->get_parent());
    return above.empty() ? app->get_name() : above + " " + app->get_name();
}

const CLI::App& innermost(const CLI::App& program) {
    const CLI::App* app = &program;
    for (auto under = app->get_subcommands(); !under.empty(); under = app->get_subcommands()) app = under.front();
    return *app;
}

// One sentence: where, what is wrong, what to do.
std::string usage_text(const std::string& name, const std::string& what) {
    return fmt::format("{}: {}; see `{} --help`", name, what, name);
}

std::string cleaned_words(std::string text) {
    std::replace(text.begin(), text.end(), '\n', ' ');
    if (!text.empty() && text[0] >= 'A' && text[0] <= 'Z' && (text.size() < 2 || text[1] > 'Z'))
        text[0] = static_cast<char>(text[0] - 'A' + 'a');
    return text;
}

// In the library's message the option's name stands before a colon.
std::string wrong_count(const std::string& said) {
    const std::string option = said.substr(0, said.find(':'));
    const bool is_repeated = said.find("At Most") != std::string::npos;
    return option + (is_repeated ? ": is given more than once" : ": has no value");
}

std::string wrong_command(const CLI::App& program, const CLI::App& app) {
    const std::vector<std::string> left = program.remaining(true);
    if (left.empty()) return "a command is missing";
    if (left.front().rfind('-', 0) == 0) return fmt::format("no such option: {}", base::shown(left.front()));
    std::vector<std::string> known;
    for (const CLI::App* child : app.get_subcommands([](const CLI::App*) { return true; }))
        known.push_back(child->get_name());
    return fmt::format("no such command: {}{}", base::shown(left.front()), base::did_you_mean(left.front(), known));
}

std::string wrong_usage(const CLI::App& program, const CLI::ParseError& error) {
    const CLI::App& app = innermost(program);
    std::string what = cleaned_words(error.what());
    if (dynamic_cast<const CLI::ArgumentMismatch*>(&error) != nullptr)
        what = wrong_count(error.what());
    else if (app.get_require_subcommand_min() > 0)
        what = wrong_command(program, app);
    return usage_text(name_of(&app), what);
}

// Applies the options that were given to the parent command, and that this command has as well, to this command: the
// library gives an option that stands after a subcommand's name to the parent too. Returns what else was given to the
// parent, which would be ignored: its last option, or else its first argument.
std::string take_words_of_parent(CLI::App& app) {
    std::string argument, option;
    for (CLI::Option* given : app.get_parent()->get_options([](CLI::Option* each) { return each->count() > 0; })) {
        if (given->get_positional()) {
            if (argument.empty()) argument = base::shown(given->results().front());
            continue;
        }
        CLI::Option* same = app.get_option_no_throw(given->get_name());
        if (same == nullptr) {
            option = given->get_name();
        } else if (same->count() == 0) {
            same->add_result(given->results());
            same->run_callback();
        }
    }
    return option.empty() ? argument : option;
}

bool is_whole_number(const std::string& word) {
    return !word.empty() && word.find_first_not_of("0123456789") == std::string::npos;
}

// Set last, so that help lists them last.
void set_help_flags(CLI::App& app) {
    app.set_help_flag("-h,--help", "print this help and exit");
    for (CLI::App* child : app.get_subcommands([](CLI::App*) { return true; })) set_help_flags(*child);
}

}  // namespace

Command& Command::add(const char* name, const char* help, const std::string& footer) {
    CLI::App* app = app_.add_subcommand(name, help)->group(command_group);
    app->footer(footer);
    children_.push_back(std::make_unique<Command>(*app));
    return *children_.back();
}

void Command::argument(const char* name, const char* help, const Reader& read, Presence presence) {
    require(app_.add_option(name, nothing_more(), help)->type_name("")->check(read), presence);
}

void Command::arguments(const char* name, const char* help, std::vector<std::string>& values, Presence presence) {
    require(app_.add_option(name, values, help)->type_name(""), presence);
}

void Command::require(CLI::Option* argument, Presence presence) {
    if (presence == Presence::required)
        argument->required();
    else if (presence == Presence::required_without_subcommand)
        required_.push_back(argument->get_name());
}

void Command::option(const char* name, const char* type, const char* help, const Reader& read) {
    app_.add_option(name, nothing_more(), help)->type_name(type)->check(read);
}

// The library would take the next word for the value whatever it is, so the words are joined before it sees them: see
// joined_words().
void Command::option_with_optional_number(const char* name, const char* type, const char* help, const Reader& read) {
    optional_numbers_.emplace_back(name);
    const Reader read_or_empty = [read](const std::string& text) { return read(text == left_out ? "" : text); };
    app_.add_option(name, nothing_more(), help)->type_name(type)->check(read_or_empty);
}

bool Command::has_optional_number(const std::string& name) const {
    return std::find(optional_numbers_.begin(), optional_numbers_.end(), name) != optional_numbers_.end() ||
           std::any_of(children_.begin(), children_.end(),
                       [&](const auto& child) { return child->has_optional_number(name); });
}

void Command::required_option(const char* name, const char* type, const char* help, const Reader& read) {
    app_.add_option(name, nothing_more(), help)->type_name(type)->check(read)->required();
}

void Command::repeated_option(const char* name, const char* type, const char* help, const Reader& read) {
    app_.add_option(name, nothing_more(), help)->type_name(type)->check(read)->take_all()->allow_extra_args(false);
}

void Command::flag(const char* name, const char* help, bool& value, const std::vector<const char*>& excluded) {
    CLI::Option* option = app_.add_flag(name, value, help);
    for (const char* other : excluded) option->excludes(app_.get_option(other));
}

void Command::json_flag(bool& value, const char* help) {
    flag("--json", help, value);
}

void Command::require_subcommand() {
    app_.require_subcommand(1);
}

const Command& Command::innermost() const {
    for (const auto& child : children_)
        if (child->app_.parsed()) return child->innermost();
    return *this;
}

std::string Command::wrong_words() const {
    for (const std::string& name : required_)
        if (app_.count(name) == 0) return name + " is required";
    if (refusal_ == nullptr) return "";
    const std::string word = take_words_of_parent(app_);
    return word.empty() ? "" : fmt::format("{}: {}", refusal_, word);
}

CommandLine::CommandLine(const char* name, const char* title, const char* footer)
    : app_(std::make_unique<CLI::App>(title, name)), program_(std::make_unique<Command>(*app_)) {
    app_->get_formatter()->column_width(28);  // before any command is added: commands copy it
    app_->get_formatter()->label("SUBCOMMAND", "COMMAND");
    app_->get_formatter()->label("Positionals", "Arguments");
    app_->get_formatter()->label("REQUIRED", "");
    app_->set_version_flag("--version", fmt::format("{} " FLUTEBOOK_VERSION, name), "print the version and exit");
    app_->fallthrough();
    app_->footer(footer);
    program_->option("--plant", "DIR", "folder of the plant's files (default: .)", read_text(plant_));
    program_->option("--ledger", "FILE", "the ledger's file (default: ledger.db in the plant's folder)",
                     read_text(ledger_));
    program_->require_subcommand();
}

CommandLine::~CommandLine() = default;

// An option whose value may be left out as one word, "--sheet=500" or "--sheet=?".
std::vector<std::string> CommandLine::joined_words(int count, const char* const* words) const {
    std::vector<std::string> result;
    bool are_arguments = false;  // after "--"
    for (int i = 0; i < count; ++i) {
        std::string word = words[i];
        are_arguments = are_arguments || word == "--";
        if (!are_arguments && program_->has_optional_number(word)) {
            const bool has_number = i + 1 < count && is_whole_number(words[i + 1]);
            word += std::string("=") + (has_number ? words[++i] : left_out);
        }
        result.push_back(std::move(word));
    }
    return result;
}

ExitCode CommandLine::run(int count, const char* const* words, Output& output) {
    set_help_flags(*app_);
    try {
        const std::vector<std::string> joined = joined_words(count, words);
        std::vector<const char*> pointers;
        for (const std::string& word : joined) pointers.push_back(word.c_str());
        app_->parse(static_cast<int>(pointers.size()), pointers.data());
    } catch (const CLI::CallForVersion& version) {
        output.write(std::string(version.what()) + "\n");
        return ExitCode::done;
    } catch (const CLI::CallForHelp&) {
        const CLI::App& app = innermost(*app_);
        output.write(app.help(name_of(app.get_parent())));
        return ExitCode::done;
    } catch (const CLI::ParseError& error) {
        complain({wrong_usage(*app_, error)});
        return ExitCode::misused;
    }
    return run_command(output);
}

ExitCode CommandLine::run_command(Output& output) {
    const Command& command = program_->innermost();
    if (const std::string wrong = command.wrong_words(); !wrong.empty()) {
        complain({usage_text(name_of(&command.app_), wrong)});
        return ExitCode::misused;
    }
    render::show_decimals_with(plant::shown_decimal_mark(plant_));
    return command.run_({plant_, ledger_.empty() ? plant_ + "/ledger.db" : ledger_, output});
}

}  // namespace flutebook::cli
