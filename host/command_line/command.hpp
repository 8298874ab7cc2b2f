// A command of the program, as its own source declares it: its arguments and options, its help and the function that
// runs it.
//
// Only command.cpp uses the library that reads the command line: its header takes long to compile, and its messages do
// not have the form of ours.
#pragma once

#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "host/command_line/option_readers.hpp"
#include "host/command_line/run_context.hpp"

namespace CLI {
class App;
class Option;
}  // namespace CLI

namespace flutebook::cli {

/// One command, or the program itself, which is the parent of all commands. The values that arguments and options are
/// read into must outlive it: the function that runs the command owns them.
class Command {
public:
    using Run = std::function<ExitCode(const RunContext&)>;

    /// Whether an argument is required, also where a subcommand is given.
    enum class Presence { required, required_without_subcommand, optional };

    /// `app` must outlive this object.
    explicit Command(CLI::App& app) : app_(app) {}
    Command(const Command&) = delete;
    Command& operator=(const Command&) = delete;

    /// Adds a subcommand. Its help ends with `footer`: the exit codes, and examples.
    Command& add(const char* name, const char* help, const std::string& footer);

    /// A positional argument. `name` is its name in help and messages.
    void argument(const char* name, const char* help, const Reader& read, Presence presence = Presence::required);
    /// One or more positional arguments.
    void arguments(const char* name, const char* help, std::vector<std::string>& values,
                   Presence presence = Presence::required);

    /// `--name TYPE`. `read` is not called where the option is not given.
    void option(const char* name, const char* type, const char* help, const Reader& read);
    /// `--name` alone, or `--name VALUE` where the next word is a whole number; `read` gets an empty
    /// text of the former. So the option may stand before an argument.
    void option_with_optional_number(const char* name, const char* type, const char* help, const Reader& read);
    void required_option(const char* name, const char* type, const char* help, const Reader& read);
    /// May be given several times; `read` is called for each.
    void repeated_option(const char* name, const char* type, const char* help, const Reader& read);

    /// `--name`. It is an error to give it together with a flag of `excluded`.
    void flag(const char* name, const char* help, bool& value, const std::vector<const char*>& excluded = {});
    /// `--json`.
    void json_flag(bool& value, const char* help = "answer in JSON, for scripts");

    /// The command does nothing itself: a subcommand must be given.
    void require_subcommand();

    /// Refuses, for this reason, an argument or option of the parent command that this command does not have.
    void refuse_words_of_parent(const char* reason) { refusal_ = reason; }

    void run_with(Run run) { run_ = std::move(run); }

private:
    friend class CommandLine;

    void require(CLI::Option* argument, Presence presence);
    [[nodiscard]] const Command& innermost() const;
    [[nodiscard]] bool has_optional_number(const std::string& name) const;
    // What is wrong with the arguments together; empty where nothing is.
    [[nodiscard]] std::string wrong_words() const;

    CLI::App& app_;
    std::vector<std::unique_ptr<Command>> children_;
    std::vector<std::string> optional_numbers_;  // options whose value may be left out
    std::vector<std::string> required_;          // arguments that are required without a subcommand
    const char* refusal_ = nullptr;
    Run run_;
};

/// The program's command line.
class CommandLine {
public:
    CommandLine(const char* name, const char* title, const char* footer);
    ~CommandLine();

    /// The program, the parent of all commands.
    [[nodiscard]] Command& program() { return *program_; }

    /// Parses the arguments and runs the command that they name. Answers help, version and wrong usage itself.
    [[nodiscard]] ExitCode run(int count, const char* const* words, Output& output);

private:
    [[nodiscard]] ExitCode run_command(Output& output);
    [[nodiscard]] std::vector<std::string> joined_words(int count, const char* const* words) const;

    std::unique_ptr<CLI::App> app_;
    std::unique_ptr<Command> program_;
    std::string plant_ = ".", ledger_;
};

}  // namespace flutebook::cli
