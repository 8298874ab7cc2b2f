// A command of the program, as its own source declares it: its words, its help and the function that runs it.
//
// The library that reads the command line is known to command.cpp alone: its header is heavy, and its words are not
// ours.
#pragma once

#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "host/cli/option_readers.hpp"
#include "host/cli/run_context.hpp"

namespace CLI {
class App;
class Option;
}  // namespace CLI

namespace flutebook::cli {

/// One command, or the program itself, under which all commands stand. The values that its words are read into must
/// outlive it: the function that runs the command owns them.
class Command {
public:
    using Run = std::function<ExitCode(const RunContext&)>;

    /// Whether a command under this one does without an argument.
    enum class Presence { required, required_without_subcommand };

    /// `app` must outlive this object.
    explicit Command(CLI::App& app) : app_(app) {}
    Command(const Command&) = delete;
    Command& operator=(const Command&) = delete;

    /// A command under this one. `footer` stands below the options in its help: the exit codes, and commands to copy.
    Command& add(const char* name, const char* help, const char* footer);

    /// A word that stands without a name on the command line. `name` is what help and messages call it.
    void argument(const char* name, const char* help, const Reader& read, Presence presence = Presence::required);
    /// As many words as are given, at least one.
    void arguments(const char* name, const char* help, std::vector<std::string>& values,
                   Presence presence = Presence::required);

    /// `--name TYPE`. Nothing is read where the option is not given.
    void option(const char* name, const char* type, const char* help, const Reader& read);
    void required_option(const char* name, const char* type, const char* help, const Reader& read);

    /// `--name`. It is refused together with a flag of `excluded`.
    void flag(const char* name, const char* help, bool& value, const std::vector<const char*>& excluded = {});
    /// `--json`.
    void json_flag(bool& value, const char* help = "answer in JSON, for scripts");

    /// The command does nothing itself: one of those under it must be given.
    void require_subcommand();

    /// A word for the command above that is none of this command's own is refused, for this reason.
    void refuse_words_of_parent(const char* reason) { refusal_ = reason; }

    void run_with(Run run) { run_ = std::move(run); }

private:
    friend class CommandLine;

    void require(CLI::Option* argument, Presence presence);
    [[nodiscard]] const Command& innermost() const;
    // What is wrong with the words beyond each by itself; empty where nothing is.
    [[nodiscard]] std::string wrong_words() const;

    CLI::App& app_;
    std::vector<std::unique_ptr<Command>> children_;
    std::vector<std::string> required_;  // arguments that commands under this one do without
    const char* refusal_ = nullptr;
    Run run_;
};

/// The program's command line.
class CommandLine {
public:
    CommandLine(const char* name, const char* title, const char* footer);
    ~CommandLine();

    /// The program, for commands to be added to.
    [[nodiscard]] Command& program() { return *program_; }

    /// Reads the words and runs the command that they name. Help, the version and wrong usage are answered at once.
    [[nodiscard]] ExitCode run(int count, const char* const* words, Output& output);

private:
    [[nodiscard]] ExitCode run_command(Output& output);

    std::unique_ptr<CLI::App> app_;
    std::unique_ptr<Command> program_;
    std::string plant_ = ".", ledger_;
};

}  // namespace flutebook::cli
