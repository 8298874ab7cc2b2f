#include "host/command_line/option_readers.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <thread>

#include "host/base/characters.hpp"
#include "host/base/decimal.hpp"
#include "host/base/quoted_text.hpp"
#include "host/command_line/whole_file.hpp"

namespace flutebook::cli {

namespace {

constexpr unsigned most_threads = 256;

std::optional<std::int64_t> whole_in(const std::string& text, const WholeNumber& kind) {
    std::int64_t number = 0;
    const auto* past = text.data() + text.size();
    const auto read = std::from_chars(text.data(), past, number);
    if (read.ec != std::errc{} || read.ptr != past || number < kind.low || number > kind.high) return std::nullopt;
    return number;
}

std::string range_text(const WholeNumber& kind) {
    if (kind.high == std::numeric_limits<std::int64_t>::max()) return fmt::format("from {} on", kind.low);
    return fmt::format("from {} to {}", kind.low, kind.high);
}

}  // namespace

Reader read_text(std::string& value) {
    return [&value](const std::string& text) {
        value = text;
        return std::string();
    };
}

namespace {

// "holds a control character; write it in text that can be seen"
std::string fault_in(const std::string& text) {
    const auto fault = base::first_fault(text);
    if (!fault) return "";
    return fmt::format("holds {}: {}; write it as one line that can be seen", base::fault_text(text, *fault),
                       base::shown(text));
}

template <typename Value>
Reader line_reader(Value& value) {
    return [&value](const std::string& text) {
        value = text;
        return fault_in(text);
    };
}

}  // namespace

Reader read_line(std::string& value) {
    return line_reader(value);
}

Reader read_line(std::optional<std::string>& value) {
    return line_reader(value);
}

Reader read_day(std::optional<base::Date>& value) {
    return [&value](const std::string& text) {
        value = base::parse_date(text);
        return value ? std::string() : fmt::format("is not a day: {}; write YYYY-MM-DD", base::shown(text));
    };
}

Reader read_month(ledger::Month& value) {
    return [&value](const std::string& text) {
        const auto first_day = base::parse_date(text + "-01");
        if (!first_day) return fmt::format("is not a month: {}; write YYYY-MM", base::shown(text));
        value = first_day->year() / first_day->month();
        return std::string();
    };
}

Reader read_page_file(std::string& value) {
    return [&value](const std::string& text) {
        value = text;
        return ends_in(text, ".html") ? std::string()
                                      : fmt::format("is not a file for a page: {}; end it in .html", base::shown(text));
    };
}

Reader read_workbook_file(std::string& value) {
    return [&value](const std::string& text) {
        value = text;
        return ends_in(text, ".xlsx")
                   ? std::string()
                   : fmt::format("is not a file for a workbook: {}; end it in .xlsx", base::shown(text));
    };
}

Reader read_list_file(std::string& value) {
    return [&value](const std::string& text) {
        value = text;
        return ends_in(text, ".csv") || ends_in(text, ".xlsx")
                   ? std::string()
                   : fmt::format("is not a file for a list: {}; end it in .csv or .xlsx", base::shown(text));
    };
}

Reader read_drawing_file(std::string& value) {
    return [&value](const std::string& text) {
        value = text;
        return ends_in(text, ".svg")
                   ? std::string()
                   : fmt::format("is not a file for a drawing: {}; end it in .svg", base::shown(text));
    };
}

namespace {

constexpr double longest_mm = 20'000;

// Parts between `x`, each a length above 0; empty where one is not.
std::vector<double> lengths_in(const std::string& text) {
    std::vector<double> result;
    for (std::size_t at = 0; at <= text.size();) {
        const std::size_t end = std::min(text.find('x', at), text.size());
        const auto length = base::read_decimal(std::string_view(text).substr(at, end - at));
        if (!length || length->mark == ',' || !(length->value > 0) || length->value > longest_mm) return {};
        result.push_back(length->value);
        at = end + 1;
    }
    return result;
}

}  // namespace

Reader read_inside_size(std::vector<double>& value) {
    return [&value](const std::string& text) {
        value = lengths_in(text);
        if (value.size() == 2 || value.size() == 3) return std::string();
        return fmt::format("is not a size: {}; write LxBxH in mm, 400x300x250, or LxB for a sheet", base::shown(text));
    };
}

Reader read_measure(std::vector<std::pair<std::string, double>>& values) {
    return [&values](const std::string& text) {
        const std::size_t sign = text.find('=');
        const auto number =
            sign == std::string::npos ? std::nullopt : base::read_decimal(std::string_view(text).substr(sign + 1));
        if (sign == 0 || !number || number->mark == ',' || !fault_in(text).empty())
            return fmt::format("is not a measure: {}; write NAME=VALUE, deep=60", base::shown(text));
        std::string name = text.substr(0, sign);
        for (const auto& [before, value] : values)
            if (before == name) return fmt::format("gives {} twice; give each measure once", base::shown(name));
        values.emplace_back(std::move(name), number->value);
        return std::string();
    };
}

Reader read_whole_number(const WholeNumber& kind, std::int64_t& value) {
    return [kind, &value](const std::string& text) {
        const auto number = whole_in(text, kind);
        if (!number)
            return fmt::format("is no {}: {}; give a whole number {}", kind.what, base::shown(text), range_text(kind));
        value = *number;
        return std::string();
    };
}

Reader read_threads(unsigned& value) {
    return [&value](const std::string& text) {
        std::int64_t number = 0;
        const std::string wrong = read_whole_number({"number of threads", 1, most_threads}, number)(text);
        if (wrong.empty()) value = static_cast<unsigned>(number);
        return wrong;
    };
}

unsigned usual_threads() {
    return std::clamp(std::thread::hardware_concurrency(), 1U, most_threads);
}

}  // namespace flutebook::cli
