#include "host/orders/enquiry_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <regex>

#include "host/base/characters.hpp"

namespace flutebook::orders {

namespace {

// A length: 400, 15.25, 15 1/4 or 3/4.
const std::string length_form = R"((?:\d+(?:\.\d+)?(?: \d+/\d+)?|\d+/\d+))";

// A size at the beginning of a text. The unit stands once, behind the last length.
const std::regex& size_form() {
    static const std::regex form("(" + length_form + ") ?x ?(" + length_form + ")(?: ?x ?(" + length_form +
                                 "))?(?: ?(mm|cm|in)(?![A-Za-z0-9]))?(?= |$)");
    return form;
}

// A length as a decimal; nothing of a fraction without an end in decimals, such as 1/3.
std::optional<std::string> decimal_of(const std::string& length) {
    const auto slash = length.find('/');
    if (slash == std::string::npos) return length;
    const auto space = length.find(' ');
    const std::size_t begin = space == std::string::npos ? 0 : space + 1;
    if (slash - begin > 4 || length.size() - slash > 5) return std::nullopt;
    const double whole = space == std::string::npos ? 0 : std::stod(length.substr(0, space));
    const double above = std::stod(length.substr(begin, slash - begin));
    const double below = std::stod(length.substr(slash + 1));
    static const std::vector<double> parts = {2, 4, 8, 16, 32, 64};
    if (std::find(parts.begin(), parts.end(), below) == parts.end()) return std::nullopt;
    return fmt::format("{}", whole + above / below);
}

}  // namespace

std::vector<EnquiryWord> enquiry_words(const std::string& line) {
    std::vector<EnquiryWord> words;
    std::size_t at = 0;
    while ((at = line.find_first_not_of(' ', at)) != std::string::npos) {
        const int column = static_cast<int>(at) + 1;
        std::smatch size;
        const auto from = line.cbegin() + static_cast<std::ptrdiff_t>(at);
        if (std::regex_search(from, line.cend(), size, size_form(), std::regex_constants::match_continuous)) {
            words.push_back({size.str(), column});
            at += static_cast<std::size_t>(size.length());
            continue;
        }
        std::string word;
        bool is_quoted = false;
        for (; at < line.size() && (is_quoted || line[at] != ' '); ++at)
            if (line[at] == '"')
                is_quoted = !is_quoted;
            else
                word += line[at];
        words.push_back({word, column});
    }
    return words;
}

std::optional<std::vector<std::string>> lengths_of(const std::string& text) {
    std::smatch size;
    if (!std::regex_match(text, size, size_form())) return std::nullopt;
    std::vector<std::string> lengths;
    for (std::size_t i = 1; i <= 3; ++i) {
        if (!size[i].matched) continue;
        const auto length = decimal_of(size[i].str());
        if (!length) return std::nullopt;
        lengths.push_back(size[4].matched ? *length + " " + size[4].str() : *length);
    }
    return lengths;
}

std::optional<std::string> share_of(std::string_view text) {
    static const std::regex form(R"((\d{1,3})(?:\.(\d{1,6}))?%)");
    std::match_results<std::string_view::const_iterator> found;
    if (!std::regex_match(text.begin(), text.end(), found, form)) return std::nullopt;
    // The point moves by two places: a sum of doubles would not end.
    std::string digits = found[1].str();
    while (digits.size() < 3) digits.insert(0, "0");
    std::string result = digits.substr(0, digits.size() - 2) + "." + digits.substr(digits.size() - 2) + found[2].str();
    while (result.back() == '0') result.pop_back();
    if (result.back() == '.') result.pop_back();
    return result;
}

bool is_whole_number(std::string_view text) {
    return !text.empty() && text.size() <= 12 && text.front() != '0' &&
           std::all_of(text.begin(), text.end(), base::is_digit);
}

}  // namespace flutebook::orders
