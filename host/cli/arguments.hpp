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

enum class OutputFormat { text, json };

struct QuoteCommand {
    enum class Keep { nothing, quotes };
    std::vector<std::string> files;
    Keep keep;
    std::optional<std::string> explain;
    std::optional<base::Date> date;
    unsigned threads;
    std::string html_file;  // empty: none
    OutputFormat form;
};

struct QuoteShowCommand {
    std::string quote;
    OutputFormat form;
};

struct QuoteRecheckCommand {
    std::string quote;
    unsigned threads;
    OutputFormat form;
};

struct OrderCommand {
    std::string quote;
    double quantity;
    std::string number;  // empty: made from the quote's
    OutputFormat form;
};

struct OrderCostCommand {
    std::string order;
    OutputFormat form;
};

struct PluginListCommand {
    OutputFormat form;
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
    OutputFormat form;
};

struct PostCommand {
    std::vector<std::string> files;
    answers::PostOptions::Keep keep;
    OutputFormat form;
};

struct MonthCommand {
    ledger::Month month;
    std::optional<ledger::Axis> by;
    std::string export_file;  // empty: none
    std::string html_file;    // empty: none
    OutputFormat form;
};

struct CloseCommand {
    ledger::Month month;
    std::string why;
    OutputFormat form;
};

struct ReverseCommand {
    std::int64_t entry;
    std::string why;
    std::optional<ledger::Date> date;
    OutputFormat form;
};

struct VerifyCommand {
    std::optional<std::string> head;
    OutputFormat form;
};

struct BackupCommand {
    std::string file;
    OutputFormat form;
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
struct UsageReply {
    std::string answer;                   // for standard output
    std::vector<std::string> complaints;  // for standard error
    ExitCode exit_code;
};

[[nodiscard]] std::variant<Arguments, UsageReply> read_arguments(int count, const char* const* words);

}  // namespace flutebook::cli
