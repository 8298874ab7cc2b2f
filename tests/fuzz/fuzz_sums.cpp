// Hostile sums through the guard and the library behind it. A second reader, written apart from the product's, says
// what each text is worth: what the product takes must be worth that to the bit, and what either refuses the other must
// refuse. So nothing is read by half, and no number that is not finite comes out.
#include <algorithm>
#include <charconv>
#include <cmath>
#include <cstring>
#include <optional>

#include "host/base/characters.hpp"
#include "host/fields/sum.hpp"
#include "tests/fuzz/fuzzer.hpp"

using namespace flutebook;
using fuzz::CaseEnd;
using fuzz::WrongCase;

namespace {

struct NamedNumber {
    std::string name;
    double value;
};

// The grammar of sum.hpp by precedence climbing: an operand, then operators of at least a rank. Every value on the way
// must be finite.
class SecondReader {
public:
    SecondReader(const std::string& text, const std::vector<NamedNumber>& numbers) : text_(text), numbers_(numbers) {}

    std::optional<double> read() {
        if (text_.size() > 200) return std::nullopt;
        const double value = sum(0);
        skip_spaces();
        if (is_wrong_ || at_ != text_.size()) return std::nullopt;
        return value;
    }

private:
    void skip_spaces() {
        while (at_ < text_.size() && text_[at_] == ' ') ++at_;
    }
    bool take(char sign) {
        skip_spaces();
        if (at_ >= text_.size() || text_[at_] != sign) return false;
        ++at_;
        return true;
    }
    double wrong() {
        is_wrong_ = true;
        return 0;
    }
    double finite(double value) { return std::isfinite(value) ? value : wrong(); }

    double sum(int depth) {
        if (depth > 20) return wrong();
        const bool is_negative = take('-');
        const double first = operand(depth);
        return climb(is_negative ? -first : first, 1, depth);
    }

    static int rank_of(char sign) { return sign == '+' || sign == '-' ? 1 : sign == '*' || sign == '/' ? 2 : 0; }

    static double apply(char sign, double left, double right) {
        switch (sign) {
            case '+':
                return left + right;
            case '-':
                return left - right;
            case '*':
                return left * right;
            default:
                return left / right;
        }
    }

    double climb(double left, int rank, int depth) {
        for (;;) {
            skip_spaces();
            const char sign = at_ < text_.size() ? text_[at_] : '\0';
            if (is_wrong_ || rank_of(sign) < rank) return left;
            ++at_;
            double right = operand(depth);
            skip_spaces();
            if (at_ < text_.size() && rank_of(text_[at_]) > rank_of(sign))
                right = climb(right, rank_of(sign) + 1, depth);
            left = is_wrong_ ? 0 : finite(apply(sign, left, right));
        }
    }

    double operand(int depth) {
        if (is_wrong_) return 0;
        if (take('(')) {
            const double value = sum(depth + 1);
            return take(')') ? value : wrong();
        }
        skip_spaces();
        const std::size_t begin = at_;
        while (at_ < text_.size() &&
               (std::isalnum(static_cast<unsigned char>(text_[at_])) != 0 || text_[at_] == '_' || text_[at_] == '.'))
            ++at_;
        const std::string word = text_.substr(begin, at_ - begin);
        if (word.empty()) return wrong();
        return std::isdigit(static_cast<unsigned char>(word.front())) != 0 ? number(word) : name(word, depth);
    }

    double number(const std::string& word) {
        const auto point = word.find('.');
        const bool is_plain = word.find_first_not_of("0123456789.") == std::string::npos && point != word.size() - 1 &&
                              std::count(word.begin(), word.end(), '.') < 2;
        if (!is_plain) return wrong();
        double value = 0;
        std::from_chars(word.data(), word.data() + word.size(), value, std::chars_format::fixed);
        return finite(value);
    }

    double name(const std::string& word, int depth) {
        if (word == "min" || word == "max" || word == "floor" || word == "ceil") return function(word, depth);
        for (const NamedNumber& number : numbers_)
            if (number.name == word) return number.value;
        return wrong();
    }

    double function(const std::string& word, int depth) {
        if (!take('(')) return wrong();
        const double first = sum(depth + 1);
        double value = 0;
        if (word == "floor" || word == "ceil") {
            value = word == "floor" ? std::floor(first + 1e-9) : std::ceil(first - 1e-9);
        } else {
            if (!take(',')) return wrong();
            const double second = sum(depth + 1);
            value = word == "min" ? std::min(first, second) : std::max(first, second);
        }
        return take(')') ? finite(value) : wrong();
    }

    const std::string& text_;
    const std::vector<NamedNumber>& numbers_;
    std::size_t at_ = 0;
    bool is_wrong_ = false;
};

// Names with values that a style may have, and values that make a sum leave what is finite.
std::vector<NamedNumber> drawn_numbers(fuzz::Draws& draws) {
    static const std::vector<double> values = {400, 300, 250, 3.3, 0.5, 0, 1, -7, 1e-300, 1e300, -1.7e308, 12345.678};
    std::vector<NamedNumber> numbers;
    for (const char* name : {"L", "B", "H", "t", "flap", "play_2", "e5", "min_", "inf", "nan"})
        numbers.push_back({name, draws.of(values)});
    numbers.push_back({std::string(120, 'n'), 5});
    return numbers;
}

// A sum by the grammar.
std::string drawn_sum(fuzz::Draws& draws, int depth) {
    static const std::vector<std::string> words = {"L", "B",    "H",  "t",      "flap", "play_2", "e5",  "0",
                                                   "2", "0.25", "40", "1.0001", "B/2",  "L + t",  "inf", "min_"};
    if (depth == 0 || draws.one_in(3)) return draws.of(words);
    const std::string left = drawn_sum(draws, depth - 1), right = drawn_sum(draws, depth - 1);
    static const std::vector<std::string> signs = {" + ", " - ", "*", "/", " * ", " / ", "-", "+"};
    switch (draws.below(6)) {
        case 0:
            return "(" + left + ")";
        case 1:
            return draws.of(std::vector<std::string>{"min(", "max("}) + left + ", " + right + ")";
        case 2:
            return draws.of(std::vector<std::string>{"floor(", "ceil("}) + left + ")";
        case 3:
            return "(-" + left + ")" + draws.of(signs) + right;
        default:
            return left + draws.of(signs) + right;
    }
}

// Words of the library's own language, of others, and signs in any order.
std::string drawn_words(fuzz::Draws& draws) {
    static const std::vector<std::string> words = {"L",
                                                   "B",
                                                   "(",
                                                   ")",
                                                   ",",
                                                   "+",
                                                   "-",
                                                   "*",
                                                   "/",
                                                   "^",
                                                   "1",
                                                   "1.5",
                                                   ".5",
                                                   "5.",
                                                   "1e9",
                                                   "0x1F",
                                                   "1,5",
                                                   "min(",
                                                   "max(",
                                                   "sum(",
                                                   "avg(",
                                                   "sin(",
                                                   "if(",
                                                   "floor",
                                                   "ceil(",
                                                   "rint",
                                                   "_pi",
                                                   "_e",
                                                   "=",
                                                   "==",
                                                   "?",
                                                   ":",
                                                   "&&",
                                                   "||",
                                                   "!",
                                                   "<=",
                                                   "#{",
                                                   "\"",
                                                   "'",
                                                   ";",
                                                   "\t",
                                                   "\n",
                                                   " ",
                                                   "%",
                                                   "{",
                                                   "}",
                                                   "[",
                                                   "]",
                                                   "$",
                                                   "@",
                                                   "--",
                                                   "++",
                                                   "**",
                                                   "//",
                                                   "\\",
                                                   "~",
                                                   "nan",
                                                   "inf",
                                                   "e5",
                                                   "min_",
                                                   "t",
                                                   "H",
                                                   "..",
                                                   "1_0",
                                                   "L2",
                                                   "2L",
                                                   "L.B",
                                                   "\xC2\xB2",
                                                   "\xE2\x88\x92",
                                                   "999999999999999999999999999999999999999999999999",
                                                   "0.000000000000000000000000000000000000000000001"};
    std::string text;
    for (std::size_t left = 1 + draws.below(12); left > 0; --left) text += draws.of(words);
    return text;
}

std::string drawn_bytes(fuzz::Draws& draws) {
    std::string text(draws.below(60), ' ');
    for (char& byte : text) byte = static_cast<char>(draws.below(256));
    return text;
}

std::string repeated(fuzz::Draws& draws) {
    static const std::vector<std::string> words = {"(",   "-", "(-", "min(",   "floor(", "L+",
                                                   "L*(", "1", "n",  "max(L,", "/"};
    const std::string& word = draws.of(words);
    std::string text;
    for (std::size_t left = draws.of(std::vector<std::size_t>{19, 20, 21, 60, 120, 198, 5000}); left > 0; --left)
        text += word;
    text += "L";
    for (std::size_t left = draws.below(24); left > 0; --left) text += ")";
    return text;
}

std::string drawn_text(fuzz::Draws& draws) {
    switch (draws.below(8)) {
        case 0:
        case 1:
            return drawn_sum(draws, 4);
        case 2:
        case 3:
            return fuzz::mutated(drawn_sum(draws, 4), draws);
        case 4:
        case 5:
            return drawn_words(draws);
        case 6:
            return repeated(draws);
        default:
            return drawn_bytes(draws);
    }
}

bool is_same(double a, double b) {
    return std::memcmp(&a, &b, sizeof a) == 0;
}

CaseEnd check(const std::string& text, const std::vector<NamedNumber>& numbers) {
    fields::NamedValues values;
    for (const NamedNumber& number : numbers) values.set(number.name, number.value);
    const auto names = fields::names_in_sum(text);
    const auto value = fields::value_of_sum(text, values);
    const auto expected = SecondReader(text, numbers).read();
    if (const auto* problem = std::get_if<fields::Problem>(&value)) {
        if (expected)
            throw WrongCase{"a sum worth " + std::to_string(*expected) + " is refused: " + problem->text, text};
        // What is not plain text is refused where a file is read, before any sum.
        const bool is_seen = base::is_plain_line(problem->text) || !base::is_plain_line(text);
        if (problem->text.empty() || !is_seen || problem->text.size() > 1000)
            throw WrongCase{"a refusal that nobody can read: " + problem->text, text};
        return CaseEnd::refused;
    }
    if (std::holds_alternative<fields::Problem>(names)) throw WrongCase{"worked out, though it is no sum", text};
    const double worth = std::get<double>(value);
    if (!std::isfinite(worth)) throw WrongCase{"a value that is not finite", text};
    if (!expected) throw WrongCase{"worked out to " + std::to_string(worth) + ", where it should be refused", text};
    if (!is_same(worth, *expected + 0.0))
        throw WrongCase{"worth " + std::to_string(*expected) + ", worked out to " + std::to_string(worth), text};
    return CaseEnd::answered;
}

}  // namespace

int main(int count, char** words) {
    return fuzz::run_fuzzer(count, words, [](fuzz::Draws& draws) {
        const auto numbers = drawn_numbers(draws);
        return check(drawn_text(draws), numbers);
    });
}
