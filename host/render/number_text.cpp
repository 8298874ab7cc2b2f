#include "host/render/number_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdint>

namespace flutebook::render {

namespace {

char shown_mark = '.';

// "-1234567.5" -> "-1 234 567.5"
std::string grouped(std::string text) {
    const std::size_t first = text.find_first_of("0123456789");
    std::size_t at = std::min(text.find_first_not_of("0123456789", first), text.size());
    while (at > first + 3) {
        at -= 3;
        text.insert(at, 1, ' ');
    }
    return text;
}

bool is_nothing(const std::string& text) {
    return text.find_first_of("123456789") == std::string::npos;
}

std::string fixed(double value, int decimals) {
    std::string text = fmt::format("{:.{}f}", value, decimals);
    if (text[0] == '-' && is_nothing(text)) text.erase(0, 1);
    return text;
}

std::string without_end_zeros(std::string text) {
    if (text.find('.') == std::string::npos) return text;
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.') text.pop_back();
    return text;
}

std::string money_with_point(Money amount) {
    const std::int64_t count = amount.ten_thousandths();
    // Unsigned: the least signed count has no positive counterpart.
    const std::uint64_t size = count < 0 ? 0 - static_cast<std::uint64_t>(count) : static_cast<std::uint64_t>(count);
    return grouped(fmt::format("{}{}.{:04}", count < 0 ? "-" : "", size / 10000, size % 10000));
}

}  // namespace

void show_decimals_with(base::DecimalMark mark) {
    shown_mark = mark == base::DecimalMark::comma ? ',' : '.';
}

std::string with_shown_mark(std::string number) {
    std::replace(number.begin(), number.end(), '.', shown_mark);
    return number;
}

std::string number_text(double value, int decimals) {
    return std::isfinite(value) ? with_shown_mark(grouped(fixed(value, decimals))) : fmt::format("{}", value);
}

std::string brief_number(double value, int most_decimals) {
    if (!std::isfinite(value)) return fmt::format("{}", value);
    std::string text = without_end_zeros(fixed(value, most_decimals));
    if (is_nothing(text) && value != 0) return with_shown_mark(fmt::format("{:.2g}", value));
    return with_shown_mark(grouped(std::move(text)));
}

std::string significant_number(double value, int digits, int most_decimals) {
    const double size = std::abs(value);
    if (value == 0 || !std::isfinite(value)) return brief_number(value, 0);
    const int before_point = static_cast<int>(std::floor(std::log10(size))) + 1;
    return brief_number(value, std::clamp(digits - before_point, 0, most_decimals));
}

std::string money_text(Money amount) {
    return with_shown_mark(money_with_point(amount));
}

std::string coin_text(Money amount, int minor_units) {
    std::string text = money_with_point(amount);
    const std::size_t kept = text.find('.') + 1 + static_cast<std::size_t>(minor_units);
    if (minor_units < 0 || kept >= text.size() || !is_nothing(text.substr(kept))) return with_shown_mark(text);
    text.erase(kept);
    if (text.back() == '.') text.pop_back();
    return with_shown_mark(text);
}

std::string percent_text(double share, int decimals) {
    return number_text(share * 100, decimals) + " %";
}

}  // namespace flutebook::render
