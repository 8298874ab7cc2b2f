// What was asked on the command line, as values. The one place that knows the command line's library.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "host/cli/exit_code.hpp"
#include "host/plant/plant.hpp"
#include "host/services/posting/post.hpp"
#include "ledger/reading/month.hpp"

namespace flutebook::cli {

enum class Form { text, json };

struct QuoteCommand {
    enum class Keep { nothing, quotes };
    std::vector<std::string> files;
    Keep keep;
    std::optional<std::string> explain;
    std::optional<base::Date> date;
    unsigned threads;
    Form form;
};

struct QuoteShowCommand {
    std::string quote;
    Form form;
};

struct QuoteRecheckCommand {
    std::string quote;
    unsigned threads;
    Form form;
};

struct OrderCommand {
    std::string quote;
    double quantity;
    std::string number;  // empty: made from the quote's
    Form form;
};

struct OrderCostCommand {
    std::string order;
    Form form;
};

struct PluginListCommand {
    Form form;
};

struct PluginGraphCommand {
    enum class As { text, json, dot, svg };
    As as;
};

struct PluginDescribeCommand {
    enum class As { text, markdown, yaml, json };
    std::string file;
    As as;
};

struct PluginCheckCommand {
    enum class As { text, json, junit };
    std::string file;
    std::uint64_t seed;
    std::size_t orders;
    As as;
};

struct PluginFactsCommand {
    enum class As { text, markdown, json };
    As as;
};

struct PluginNewCommand {
    std::string name;
    Form form;
};

struct PostCommand {
    std::vector<std::string> files;
    services::PostAsked::Keep keep;
    Form form;
};

struct MonthCommand {
    ledger::Month month;
    std::optional<ledger::Axis> by;
    std::string export_file;  // empty: none
    Form form;
};

struct CloseCommand {
    ledger::Month month;
    std::string why;
    Form form;
};

struct ReverseCommand {
    std::int64_t entry;
    std::string why;
    std::optional<ledger::Date> date;
    Form form;
};

struct VerifyCommand {
    std::optional<std::string> head;
    Form form;
};

struct BackupCommand {
    std::string file;
    Form form;
};

struct Arguments {
    using Command = std::variant<QuoteCommand, QuoteShowCommand, QuoteRecheckCommand, OrderCommand, OrderCostCommand,
                                 PostCommand, MonthCommand, CloseCommand, ReverseCommand, VerifyCommand, BackupCommand,
                                 PluginListCommand, PluginGraphCommand, PluginDescribeCommand, PluginFactsCommand,
                                 PluginNewCommand, PluginCheckCommand>;
    std::string plant;   // the folder
    std::string ledger;  // the file
    Command command;
};

/// Nothing to do: help or version were asked for, or the usage is wrong.
struct Spoken {
    std::string answer;                   // for standard output
    std::vector<std::string> complaints;  // for standard error
    ExitCode exit_code;
};

[[nodiscard]] std::variant<Arguments, Spoken> read_arguments(int count, const char* const* words);

}  // namespace flutebook::cli
