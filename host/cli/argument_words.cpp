#include "host/cli/argument_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <limits>
#include <thread>
#include <utility>

#include "host/base/date.hpp"
#include "host/base/quoted_text.hpp"
#include "host/cli/whole_file.hpp"

namespace flutebook::cli {

namespace {

constexpr unsigned most_threads = 256;
constexpr std::int64_t most_orders = 1'000'000;

const std::vector<std::pair<std::string, ledger::Axis>> axes = {{"machine", ledger::Axis::centre},
                                                                {"shift", ledger::Axis::shift},
                                                                {"board", ledger::Axis::board},
                                                                {"order", ledger::Axis::order}};

bool is_whole(const std::string& text, std::int64_t low, std::int64_t high) {
    std::int64_t number = 0;
    const auto* past = text.data() + text.size();
    const auto read = std::from_chars(text.data(), past, number);
    return read.ec == std::errc{} && read.ptr == past && number >= low && number <= high;
}

}  // namespace

unsigned Words::usual_threads() {
    return std::clamp(std::thread::hardware_concurrency(), 1U, most_threads);
}

answers::PostOptions::Keep Words::keep() const {
    return dry_run ? answers::PostOptions::Keep::nothing : answers::PostOptions::Keep::all;
}

QuoteCommand::Keep Words::keep_quotes() const {
    return save ? QuoteCommand::Keep::quotes : QuoteCommand::Keep::nothing;
}

OutputFormat Words::form() const {
    return json ? OutputFormat::json : OutputFormat::text;
}

PluginGraphCommand::As Words::graph_form() const {
    using As = PluginGraphCommand::As;
    if (json) return As::json;
    if (dot) return As::dot;
    return svg ? As::svg : As::text;
}

PluginFactsCommand::As Words::facts_form() const {
    using As = PluginFactsCommand::As;
    if (json) return As::json;
    return markdown ? As::markdown : As::text;
}

PluginCheckCommand::As Words::check_form() const {
    using As = PluginCheckCommand::As;
    if (json) return As::json;
    return junit ? As::junit : As::text;
}

PluginDescribeCommand::As Words::description_form() const {
    using As = PluginDescribeCommand::As;
    if (json) return As::json;
    if (markdown) return As::markdown;
    return yaml ? As::yaml : As::text;
}

std::optional<ledger::Month> parse_month(const std::string& text) {
    const auto first = base::parse_date(text + "-01");
    if (!first) return std::nullopt;
    return first->year() / first->month();
}

std::optional<ledger::Axis> find_axis(const std::string& text) {
    for (const auto& [name, axis] : axes)
        if (name == text) return axis;
    return std::nullopt;
}

std::string wrong_date(const std::string& text) {
    if (base::parse_date(text)) return {};
    return fmt::format("is no day: {}; write YYYY-MM-DD", base::shown(text));
}

std::string wrong_month(const std::string& text) {
    if (parse_month(text)) return {};
    return fmt::format("is no month: {}; write YYYY-MM", base::shown(text));
}

std::string wrong_axis(const std::string& text) {
    if (find_axis(text)) return {};
    return fmt::format("cannot be divided by {}; choose machine, shift, board or order", base::shown(text));
}

std::string wrong_export(const std::string& file) {
    if (ends_in(file, ".xlsx") || ends_in(file, ".csv")) return {};
    return fmt::format("is no file to export to: {}; end it in .xlsx or .csv", base::shown(file));
}

std::string wrong_html(const std::string& file) {
    if (ends_in(file, ".html")) return {};
    return fmt::format("is no file for a page: {}; end it in .html", base::shown(file));
}

std::string wrong_entry(const std::string& text) {
    if (is_whole(text, 1, std::numeric_limits<std::int64_t>::max())) return {};
    return fmt::format("is no entry's number: {}; give a whole number from 1 on", base::shown(text));
}

std::string wrong_threads(const std::string& text) {
    if (is_whole(text, 1, most_threads)) return {};
    return fmt::format("is no number of threads: {}; give a whole number from 1 to {}", base::shown(text),
                       most_threads);
}

std::string wrong_seed(const std::string& text) {
    if (is_whole(text, 0, std::numeric_limits<std::int64_t>::max())) return {};
    return fmt::format("is no seed: {}; give a whole number from 0 on", base::shown(text));
}

std::string wrong_orders(const std::string& text) {
    if (is_whole(text, 1, most_orders)) return {};
    return fmt::format("is no number of orders: {}; give a whole number from 1 to {}", base::shown(text), most_orders);
}

}  // namespace flutebook::cli
