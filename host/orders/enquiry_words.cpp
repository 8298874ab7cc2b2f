#include "host/orders/enquiry_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <cstdlib>

#include "host/base/characters.hpp"
#include "host/base/decimal.hpp"

namespace flutebook::orders {

namespace {

// Takes what it is asked for from the front of a text, or leaves the text as it was.
class WordScanner {
public:
    explicit WordScanner(std::string_view text) : text_(text) {}

    [[nodiscard]] std::size_t position() const { return at_; }
    [[nodiscard]] bool is_at_end() const { return at_ == text_.size(); }
    [[nodiscard]] bool is_before_space() const { return is_at_end() || text_[at_] == ' '; }

    bool take(std::string_view word) {
        if (text_.substr(at_, word.size()) != word) return false;
        at_ += word.size();
        return true;
    }

    std::string_view digits() {
        const std::size_t begin = at_;
        while (at_ < text_.size() && base::is_digit(text_[at_])) ++at_;
        return text_.substr(begin, at_ - begin);
    }

    void go_back(std::size_t position) { at_ = position; }

private:
    std::string_view text_;
    std::size_t at_ = 0;
};

// A length as it is written: 400, 15.25, 15 1/4 or 3/4. What a fraction comes to, the reader of numbers says.
std::optional<std::string> take_length(WordScanner& scanner) {
    const std::string whole(scanner.digits());
    if (whole.empty() || whole.size() > 9) return std::nullopt;
    for (const char* mark : {".", "/"})
        if (scanner.take(mark)) {
            const std::string behind(scanner.digits());
            return behind.empty() ? std::nullopt : std::optional(whole + mark + behind);
        }
    const std::size_t behind = scanner.position();
    if (scanner.take(" ")) {
        const std::string above(scanner.digits());
        if (!above.empty() && scanner.take("/"))
            if (const std::string below(scanner.digits()); !below.empty())
                return fmt::format("{} {}/{}", whole, above, below);
        scanner.go_back(behind);
    }
    return whole;
}

struct Size {
    std::vector<std::string> lengths;
    std::string unit;  // empty where none is said
};

bool take_cross(WordScanner& scanner) {
    const std::size_t before = scanner.position();
    scanner.take(" ");
    if (!scanner.take("x")) {
        scanner.go_back(before);
        return false;
    }
    scanner.take(" ");
    return true;
}

// The unit stands once, behind the last length.
std::string take_unit(WordScanner& scanner) {
    const std::size_t before = scanner.position();
    scanner.take(" ");
    for (const char* unit : {"mm", "cm", "in"})
        if (scanner.take(unit) && scanner.is_before_space()) return unit;
    scanner.go_back(before);
    return "";
}

// A size at the front of a text, up to a space or its end.
std::optional<Size> take_size(WordScanner& scanner) {
    Size size;
    do {
        const auto length = take_length(scanner);
        if (!length) return std::nullopt;
        size.lengths.push_back(*length);
    } while (size.lengths.size() < 3 && take_cross(scanner));
    size.unit = take_unit(scanner);
    if (size.lengths.size() < 2 || !scanner.is_before_space()) return std::nullopt;
    return size;
}

}  // namespace

std::vector<EnquiryWord> enquiry_words(const std::string& line) {
    std::vector<EnquiryWord> words;
    std::size_t at = 0;
    while ((at = line.find_first_not_of(' ', at)) != std::string::npos) {
        const int column = static_cast<int>(at) + 1;
        WordScanner scanner(std::string_view(line).substr(at));
        if (take_size(scanner)) {
            words.push_back({line.substr(at, scanner.position()), column});
            at += scanner.position();
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
    WordScanner scanner(text);
    auto size = take_size(scanner);
    if (!size || !scanner.is_at_end()) return std::nullopt;
    if (!size->unit.empty())
        for (std::string& length : size->lengths) length += " " + size->unit;
    return size->lengths;
}

std::optional<std::string> share_of(std::string_view text) {
    WordScanner scanner(text);
    std::string digits(scanner.digits());
    const std::string decimals(scanner.take(".") ? scanner.digits() : std::string_view());
    if (digits.empty() || digits.size() > 3 || decimals.size() > 6 || !scanner.take("%") || !scanner.is_at_end())
        return std::nullopt;
    // The point moves by two places: a sum of doubles would not end.
    while (digits.size() < 3) digits.insert(0, "0");
    std::string result = digits.substr(0, digits.size() - 2) + "." + digits.substr(digits.size() - 2) + decimals;
    while (result.back() == '0') result.pop_back();
    if (result.back() == '.') result.pop_back();
    return result;
}

std::string share_in_per_cent(const std::string& share) {
    return base::canonical(base::short_decimal(std::strtod(share.c_str(), nullptr) * 100));
}

bool is_whole_number(std::string_view text) {
    return !text.empty() && text.size() <= 12 && text.front() != '0' &&
           std::all_of(text.begin(), text.end(), base::is_digit);
}

}  // namespace flutebook::orders
