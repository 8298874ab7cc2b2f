// The words of a command line as they were typed, what each must be like, and what they mean. Knows no library.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "host/cli/arguments.hpp"

namespace flutebook::cli {

/// Every word that any command takes; one that was not given is as it begins here.
struct Words {
    std::string plant = ".";
    std::vector<std::string> files;
    std::string explain, date, plugin_file, plugin_name;
    std::string quote, order, ledger, month, by, export_file, html_file, why, head, backup_file;
    std::int64_t entry = 0, quantity = 0;
    std::uint64_t seed = 1;
    std::size_t orders = usual_orders;  // to check a plugin with
    unsigned threads = usual_threads();
    bool json = false, dry_run = false, save = false, dot = false, svg = false, markdown = false, yaml = false,
         junit = false;

    static constexpr std::size_t usual_orders = 1000;
    [[nodiscard]] static unsigned usual_threads();  // as many as the machine runs at once
    [[nodiscard]] answers::PostOptions::Keep keep() const;
    [[nodiscard]] QuoteCommand::Keep keep_quotes() const;
    [[nodiscard]] OutputFormat form() const;
    [[nodiscard]] PluginGraphCommand::As graph_form() const;
    [[nodiscard]] PluginFactsCommand::As facts_form() const;
    [[nodiscard]] PluginCheckCommand::As check_form() const;
    [[nodiscard]] PluginDescribeCommand::As description_form() const;
};

[[nodiscard]] std::optional<ledger::Month> parse_month(const std::string& text);
[[nodiscard]] std::optional<ledger::Axis> find_axis(const std::string& text);

// What is wrong with a word, as it goes on after the option's name; empty where nothing is.
[[nodiscard]] std::string wrong_date(const std::string& text);
[[nodiscard]] std::string wrong_month(const std::string& text);
[[nodiscard]] std::string wrong_axis(const std::string& text);
[[nodiscard]] std::string wrong_export(const std::string& file);
[[nodiscard]] std::string wrong_html(const std::string& file);
[[nodiscard]] std::string wrong_entry(const std::string& text);
[[nodiscard]] std::string wrong_threads(const std::string& text);
[[nodiscard]] std::string wrong_seed(const std::string& text);
[[nodiscard]] std::string wrong_orders(const std::string& text);

}  // namespace flutebook::cli
