#include "host/cli/beside_options.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <variant>

#include "host/base/decimal.hpp"
#include "host/base/quoted_text.hpp"

namespace flutebook::cli {

namespace {

constexpr double longest_roll_mm = 100'000;
constexpr double whole_percent = 100;
constexpr const char* any_board = "any";

Reader read_changes(std::vector<what_if::NumberChange>& changes) {
    return [&changes](const std::string& text) {
        auto change = what_if::read_change(text);
        if (const auto* wrong = std::get_if<std::string>(&change)) return *wrong;
        const auto& read = std::get<what_if::NumberChange>(change);
        if (std::any_of(changes.begin(), changes.end(), [&](const auto& before) { return before.path == read.path; }))
            return fmt::format("gives {} twice; change each number once", base::shown(read.path));
        changes.push_back(read);
        return std::string();
    };
}

// Parts between commas; `read` gets each and says whether it is one.
template <typename Read>
bool read_parts(const std::string& text, const Read& read) {
    for (std::size_t at = 0; at <= text.size();) {
        const std::size_t end = std::min(text.find(',', at), text.size());
        std::string part = text.substr(at, end - at);
        while (part.starts_with(' ')) part.erase(0, 1);
        while (part.ends_with(' ')) part.pop_back();
        if (part.empty() || !read(part)) return false;
        at = end + 1;
    }
    return true;
}

std::optional<double> decimal_in(const std::string& text) {
    const bool is_negative = text.starts_with('-');
    const auto number = base::read_decimal(is_negative ? text.substr(1) : text);
    if (!number || number->mark == ',') return std::nullopt;
    return is_negative ? -number->value : number->value;
}

template <typename Value>
bool add_once(std::vector<Value>& values, const Value& value) {
    if (std::find(values.begin(), values.end(), value) != values.end()) return false;
    values.push_back(value);
    return true;
}

Reader read_boards(std::vector<std::string>& boards) {
    return [&boards](const std::string& text) {
        return read_parts(text, [&](const std::string& part) { return add_once(boards, part); })
                   ? std::string()
                   : fmt::format("is no list of boards: {}; name each once, with commas between: B-140,C-140",
                                 base::shown(text));
    };
}

Reader read_margins(std::vector<double>& margins) {
    return [&margins](const std::string& text) {
        const auto read = [&](std::string part) {
            const std::size_t length = part.size();
            if (part.ends_with('%')) part.pop_back();
            if (part.ends_with(' ')) part.pop_back();
            const bool is_marked = part.size() < length;
            const auto percent = decimal_in(part);
            // 0.15 is 15 % in a request, and would be almost nothing here.
            if (!is_marked && percent && *percent > 0 && *percent < 1) return false;
            return percent && *percent<whole_percent&& * percent> - whole_percent &&
                   add_once(margins, *percent / whole_percent);
        };
        return read_parts(text, read)
                   ? std::string()
                   : fmt::format(
                         "is no list of margins: {}; give each once in per cent of the price, below 100, with "
                         "commas between: 15,18,22; less than one per cent with its sign: 0.5%",
                         base::shown(text));
    };
}

Reader read_prices(std::vector<Money>& prices) {
    return [&prices](const std::string& text) {
        const auto read = [&](const std::string& part) {
            const auto number = decimal_in(part);
            const auto price = number ? Money::rounded(*number, 4) : std::nullopt;
            return price && *price > Money() && add_once(prices, *price);
        };
        return read_parts(text, read)
                   ? std::string()
                   : fmt::format(
                         "is no list of prices: {}; give each once, above 0 for a thousand, with commas "
                         "between: 590,610.50",
                         base::shown(text));
    };
}

Reader read_strength(std::optional<double>& value) {
    return [&value](const std::string& text) {
        const auto number = decimal_in(text);
        if (!number || !(*number > 0)) return fmt::format("takes a number above 0: found {}", base::shown(text));
        value = *number;
        return std::string();
    };
}

Reader read_roll(std::optional<double>& roll_width_mm) {
    return [&roll_width_mm](const std::string& text) {
        const auto number = decimal_in(text);
        if (!number || !(*number > 0) || *number > longest_roll_mm)
            return fmt::format("is no roll width: {}; give it in mm: 2050", base::shown(text));
        roll_width_mm = *number;
        return std::string();
    };
}

Reader read_rank(std::optional<AskedRank>& rank) {
    return [&rank](const std::string& text) {
        rank = AskedRank{};
        if (text.empty()) return std::string();
        std::int64_t quantity = 0;
        const std::string wrong = read_whole_number({"quantity", 1}, quantity)(text);
        if (wrong.empty()) rank->quantity = static_cast<double>(quantity);
        return wrong;
    };
}

Reader read_ups(std::optional<double>& ups) {
    return [&ups](const std::string& text) {
        std::int64_t number = 0;
        const std::string wrong = read_whole_number({"number of boxes on a sheet", 1, 1'000'000}, number)(text);
        if (wrong.empty()) ups = static_cast<double>(number);
        return wrong;
    };
}

// A number that --with sets and another option sets again would stand in the answer as changed, and not count.
std::string changed_twice(const BesideOptions& options) {
    const auto twice = [&](const char* path, const char* option) {
        const auto is_of = [&](const what_if::NumberChange& change) { return change.path == path; };
        return std::any_of(options.changes.begin(), options.changes.end(), is_of)
                   ? fmt::format("--with {}: is set by {} as well; leave out one of them", path, option)
                   : std::string();
    };
    if (!options.alternatives.margins.empty()) return twice("request.margin", "--margin");
    if (!options.alternatives.prices.empty()) return twice("request.margin", "--price");
    return "";
}

}  // namespace

const char* const beside_footer =
    R"(

Beside one another: --with names a number of the plant by the path that messages use (`plugins.` may
be left out, `*` stands for every name), or one of the request behind `request.`; +N% and -N% move
each number of a list or table, a value takes the place of what counts. Beside --board, --margin,
--price, --rank or a way, the numbers of --with are changed first. No file is changed, and none of
these answers can be saved.

  flutebook quote R-1001.yaml --with papers.TL125.price=+5%
  flutebook quote R-1001.yaml --with energy.power_price=0.19 --with machines.FG1.setup.minutes=15
  flutebook quote R-1001.yaml --board B-140,C-125 --margin 15,18,22
  flutebook quote R-1001.yaml --board B-140,C-125 --with papers.*.price=+5%
  flutebook quote R-1001.yaml --price 590 --json
  flutebook quote R-1001.yaml --board any --bct 3.0
  flutebook quote R-1001.yaml --corrugator C1 --roll 2050 --ups 1
  flutebook quote R-1001.yaml --rank 5000)";

void add_beside_options(Command& command, BesideOptions& options) {
    command.repeated_option("--with", "NAME=VALUE", "what if this number were another: before and after, line by line",
                            read_changes(options.changes));
    command.option("--board", "A,B", "the same request on each of these boards; `any` beside --ect or --bct",
                   read_boards(options.alternatives.boards));
    command.option("--ect", "KN/M", "find the cheapest board with this edge crush resistance",
                   read_strength(options.strength.ect_kn_m));
    command.option("--bct", "KN", "find the cheapest board whose box is estimated to bear this from above",
                   read_strength(options.strength.bct_kn));
    command.option("--margin", "M,N", "at each of these margins, in per cent of the price",
                   read_margins(options.alternatives.margins));
    command.option("--price", "P,Q", "at each of these prices a thousand: the margin that it leaves",
                   read_prices(options.alternatives.prices));
    command.option_with_optional_number("--rank", "[QUANTITY]",
                                        "what moves the price: every number behind it, by what a tenth of it does",
                                        read_rank(options.rank));
    command.option("--corrugator", "CODE", "of all ways only those on this corrugator",
                   read_line(options.way.corrugator));
    command.option("--roll", "MM", "of all ways only those on a roll of this width",
                   read_roll(options.way.roll_width_mm));
    command.option("--ups", "N", "of all ways only those with so many boxes on a sheet", read_ups(options.way.ups));
}

std::string BesideOptions::first_name() const {
    if (!changes.empty()) return "--with";
    if (!alternatives.boards.empty()) return "--board";
    if (!alternatives.margins.empty()) return "--margin";
    if (!alternatives.prices.empty()) return "--price";
    if (rank) return "--rank";
    if (strength.is_any()) return strength.ect_kn_m ? "--ect" : "--bct";
    if (way.corrugator) return "--corrugator";
    if (way.roll_width_mm) return "--roll";
    return way.ups ? "--ups" : "";
}

std::string wrong_together(const BesideOptions& options) {
    const std::vector<std::string>& boards = options.alternatives.boards;
    const bool is_any_board = boards == std::vector<std::string>{any_board};
    if (is_any_board && !options.strength.is_any())
        return "--board any: is for a strength: found neither --ect nor --bct; add one of them";
    if (options.strength.is_any() &&
        (options.rank || !options.changes.empty() || options.way.is_any() || !options.alternatives.margins.empty() ||
         !options.alternatives.prices.empty() || !(boards.empty() || is_any_board)))
        return fmt::format(
            "{}: searches every board: found another option that sets something beside the request; leave out one of "
            "them",
            options.strength.ect_kn_m ? "--ect" : "--bct");
    if (options.rank && options.alternatives.is_any())
        return "--rank: moves one number at a time of one request: found --board, --margin or --price as well; leave "
               "out one of them, or change the request by --with";
    if (!options.alternatives.margins.empty() && !options.alternatives.prices.empty())
        return "--margin: a price has its own margin: found --price as well; leave out one of them";
    return changed_twice(options);
}

}  // namespace flutebook::cli
