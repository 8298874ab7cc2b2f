#include "host/beside/asked.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <variant>

#include "host/base/decimal.hpp"
#include "host/base/quoted_text.hpp"

namespace flutebook::beside {

namespace {

constexpr double longest_roll_mm = 100'000;
constexpr double whole_percent = 100;
constexpr const char* any_board = "any";

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

// A number that is changed and that something else sets again would stand in the answer as changed, and not count.
std::string changed_twice(const Asked& asked, const Names& names) {
    const auto twice = [&](const char* path, const char* name) {
        const auto is_of = [&](const what_if::NumberChange& change) { return change.path == path; };
        return std::any_of(asked.changes.begin(), asked.changes.end(), is_of)
                   ? fmt::format("{} {}: is set by {} as well; leave out one of them", names.with, path, name)
                   : std::string();
    };
    if (!asked.alternatives.margins.empty()) return twice("request.margin", names.margin);
    if (!asked.alternatives.prices.empty()) return twice("request.margin", names.price);
    return "";
}

}  // namespace

cli::Reader read_changes(std::vector<what_if::NumberChange>& changes) {
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

cli::Reader read_boards(std::vector<std::string>& boards) {
    return [&boards](const std::string& text) {
        return read_parts(text, [&](const std::string& part) { return add_once(boards, part); })
                   ? std::string()
                   : fmt::format("is no list of boards: {}; name each once, with commas between: B-140,C-140",
                                 base::shown(text));
    };
}

cli::Reader read_margins(std::vector<double>& margins) {
    return [&margins](const std::string& text) {
        const auto read = [&](std::string part) {
            const bool is_marked = part.ends_with('%');
            if (is_marked) part.pop_back();
            if (part.ends_with(' ')) part.pop_back();
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

cli::Reader read_prices(std::vector<Money>& prices) {
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

cli::Reader read_strength(std::optional<double>& value) {
    return [&value](const std::string& text) {
        const auto number = decimal_in(text);
        if (!number || !(*number > 0)) return fmt::format("takes a number above 0: found {}", base::shown(text));
        value = *number;
        return std::string();
    };
}

cli::Reader read_roll(std::optional<double>& roll_width_mm) {
    return [&roll_width_mm](const std::string& text) {
        const auto number = decimal_in(text);
        if (!number || !(*number > 0) || *number > longest_roll_mm)
            return fmt::format("is no roll width: {}; give it in mm: 2050", base::shown(text));
        roll_width_mm = *number;
        return std::string();
    };
}

cli::Reader read_rank(std::optional<AskedRank>& rank) {
    return [&rank](const std::string& text) {
        rank = AskedRank{};
        if (text.empty()) return std::string();
        std::int64_t quantity = 0;
        const std::string wrong = cli::read_whole_number({"quantity", 1}, quantity)(text);
        if (wrong.empty()) rank->quantity = static_cast<double>(quantity);
        return wrong;
    };
}

cli::Reader read_ups(std::optional<double>& ups) {
    return [&ups](const std::string& text) {
        std::int64_t number = 0;
        const std::string wrong = cli::read_whole_number({"number of boxes on a sheet", 1, 1'000'000}, number)(text);
        if (wrong.empty()) ups = static_cast<double>(number);
        return wrong;
    };
}

std::string first_name(const Asked& asked, const Names& names) {
    if (!asked.changes.empty()) return names.with;
    if (!asked.alternatives.boards.empty()) return names.board;
    if (!asked.alternatives.margins.empty()) return names.margin;
    if (!asked.alternatives.prices.empty()) return names.price;
    if (asked.rank) return names.rank;
    if (asked.strength.is_any()) return asked.strength.ect_kn_m ? names.ect : names.bct;
    if (asked.way.corrugator) return names.corrugator;
    if (asked.way.roll_width_mm) return names.roll;
    return asked.way.ups ? names.ups : "";
}

std::string wrong_together(const Asked& asked, const Names& names) {
    const std::vector<std::string>& boards = asked.alternatives.boards;
    const bool is_any_board = boards == std::vector<std::string>{any_board};
    if (is_any_board && !asked.strength.is_any())
        return fmt::format("{} any: is for a strength: found neither {} nor {}; add one of them", names.board,
                           names.ect, names.bct);
    if (asked.strength.is_any() &&
        (asked.rank || !asked.changes.empty() || asked.way.is_any() || !asked.alternatives.margins.empty() ||
         !asked.alternatives.prices.empty() || !(boards.empty() || is_any_board)))
        return fmt::format(
            "{}: searches every board: found another option that sets something beside the request; leave out one of "
            "them",
            asked.strength.ect_kn_m ? names.ect : names.bct);
    if (asked.rank && asked.alternatives.is_any())
        return fmt::format(
            "{}: moves one number at a time of one request: found {}, {} or {} as well; leave out one of them, or "
            "change the request by {}",
            names.rank, names.board, names.margin, names.price, names.with);
    if (!asked.alternatives.margins.empty() && !asked.alternatives.prices.empty())
        return fmt::format("{}: a price has its own margin: found {} as well; leave out one of them", names.margin,
                           names.price);
    return changed_twice(asked, names);
}

}  // namespace flutebook::beside
