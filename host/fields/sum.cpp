// Calculates sums with muParser, after our own reader has checked them: its standard parser has operators and functions
// that no style needs, and its behaviour on hostile text is undefined. What passes SumReader uses a handful of its
// features alone.
//
// A compiled parser writes to its own stack while it evaluates, so none is ever shared between threads.
#include "host/fields/sum.hpp"

#include <fmt/format.h>
#include <muParserBase.h>

#include <algorithm>
#include <array>
#include <cfenv>
#include <charconv>
#include <cmath>
#include <memory>
#include <optional>
#include <unordered_map>

#include "host/base/characters.hpp"
#include "host/base/quoted_text.hpp"

namespace flutebook::fields {

namespace {

struct SumFunction {
    std::string_view name;
    std::size_t values;
};

constexpr std::array<SumFunction, 4> sum_functions = {{{"min", 2}, {"max", 2}, {"floor", 1}, {"ceil", 1}}};

const SumFunction* find_function(std::string_view name) {
    const auto* found = std::find_if(sum_functions.begin(), sum_functions.end(),
                                     [&](const SumFunction& function) { return function.name == name; });
    return found == sum_functions.end() ? nullptr : found;
}

bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

bool is_name_part(char c) {
    return is_letter(c) || base::is_digit(c) || c == '_';
}

// Reads a sum by the grammar of the header: no more may reach the library. Stops at the first fault.
class SumReader {
public:
    explicit SumReader(std::string_view text) : text_(text) {}

    std::variant<std::vector<std::string>, Problem> read() {
        if (text_.size() > longest_sum)
            return Problem{fmt::format("a sum of {} characters, expected at most {}", text_.size(), longest_sum)};
        read_sum(0);
        if (!fault_ && next() == ',') refuse("a second value begins at `,`; expected one value");
        if (!fault_ && !is_at_end()) refuse_here("an operator or the end");
        if (fault_) return Problem{fmt::format("not a sum: found {}: {}", base::shown(text_), *fault_)};
        return std::move(names_);
    }

private:
    // The next character that is no space; 0 at the end, and at a NUL.
    char next() {
        while (at_ < text_.size() && text_[at_] == ' ') ++at_;
        return at_ < text_.size() ? text_[at_] : '\0';
    }
    bool is_at_end() {
        static_cast<void>(next());
        return at_ == text_.size();
    }

    void refuse(std::string why) {
        if (!fault_) fault_ = std::move(why);
    }
    void refuse_here(std::string_view expected) {
        if (is_at_end())
            refuse(fmt::format("it ends too early, expected {}", expected));
        else
            refuse(fmt::format("at character {}, expected {}", at_ + 1, expected));
    }

    bool take(char c) {
        if (fault_ || next() != c) return false;
        ++at_;
        return true;
    }

    void read_sum(int depth) {
        if (depth > deepest_sum) return refuse(fmt::format("brackets deeper than {}", deepest_sum));
        static_cast<void>(take('-'));
        do read_product(depth);
        while (take('+') || take('-'));
    }

    void read_product(int depth) {
        do read_factor(depth);
        while (take('*') || take('/'));
    }

    void read_factor(int depth) {
        if (fault_) return;
        const char c = next();
        if (take('(')) {
            read_sum(depth + 1);
            if (!take(')')) refuse_here("`)`");
        } else if (base::is_digit(c)) {
            read_decimal();
        } else if (is_letter(c)) {
            read_name(depth);
        } else {
            refuse_here("a number, a name or `(`");
        }
    }

    void skip_digits() {
        while (at_ < text_.size() && base::is_digit(text_[at_])) ++at_;
    }

    void read_decimal() {
        skip_digits();
        if (at_ < text_.size() && text_[at_] == '.') {
            ++at_;
            if (at_ == text_.size() || !base::is_digit(text_[at_])) return refuse_here("a digit after the point");
            skip_digits();
        }
        if (at_ < text_.size() && (is_name_part(text_[at_]) || text_[at_] == '.'))
            refuse_here("an operator after the number");
    }

    void read_name(int depth) {
        const std::size_t begin = at_;
        while (at_ < text_.size() && is_name_part(text_[at_])) ++at_;
        const std::string_view name = text_.substr(begin, at_ - begin);
        if (const SumFunction* function = find_function(name)) return read_function(*function, depth);
        if (next() == '(')
            return refuse(fmt::format("{} is no function, expected min, max, floor or ceil", base::shown(name)));
        if (std::find(names_.begin(), names_.end(), name) == names_.end()) names_.emplace_back(name);
    }

    void read_function(const SumFunction& function, int depth) {
        const auto expected = fmt::format("{} of {} in brackets", function.name, function.values == 2 ? "two" : "one");
        if (!take('(')) return refuse_here(expected);
        for (std::size_t i = 0; i < function.values; ++i) {
            read_sum(depth + 1);
            if (!take(i + 1 == function.values ? ')' : ',')) refuse_here(expected);
        }
    }

    std::string_view text_;
    std::size_t at_ = 0;
    std::vector<std::string> names_;
    std::optional<std::string> fault_;
};

constexpr double whole_tolerance = 1e-9;

double lesser(double a, double b) {
    return std::min(a, b);
}
double greater(double a, double b) {
    return std::max(a, b);
}
double floor_of(double x) {
    return std::floor(x + whole_tolerance);
}
double ceil_of(double x) {
    return std::ceil(x - whole_tolerance);
}
double negative(double x) {
    return -x;
}

// Reads a number at the beginning of `text`; the library's own reader asks the locale.
int take_number(const mu::char_type* text, int* position, mu::value_type* value) {
    const std::string_view rest(text);
    const auto [end, failure] =
        std::from_chars(rest.data(), rest.data() + rest.size(), *value, std::chars_format::fixed);
    if (failure != std::errc() || end == rest.data() || !base::is_digit(*text)) return 0;
    *position += static_cast<int>(end - rest.data());
    return 1;
}

// The library with the functions and signs of a sum and nothing else. It does not reorder sums: B/3 stays a division.
class Calculator : public mu::ParserBase {
public:
    Calculator() {
        AddValIdent(take_number);
        InitCharSets();
        InitFun();
        InitOprt();
        EnableOptimizer(false);
    }

    void InitCharSets() override {
        DefineNameChars("0123456789_abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ");
        DefineOprtChars("+-*/");
        DefineInfixOprtChars("-");
    }
    void InitFun() override {
        DefineFun("min", lesser);
        DefineFun("max", greater);
        DefineFun("floor", floor_of);
        DefineFun("ceil", ceil_of);
    }
    void InitConst() override {}
    void InitOprt() override { DefineInfixOprt("-", negative); }
};

// One sum, read once. Its variables are its own.
class CompiledSum {
public:
    CompiledSum(const std::string& text, std::vector<std::string> names)
        : names_(std::move(names)), values_(names_.size()) {
        for (std::size_t i = 0; i < names_.size(); ++i) calculator_.DefineVar(names_[i], &values_[i]);
        // No sum needs its spaces, and the library takes none before a bracket.
        std::string closed_up = text;
        closed_up.erase(std::remove(closed_up.begin(), closed_up.end(), ' '), closed_up.end());
        calculator_.SetExpr(closed_up);
    }
    CompiledSum(const CompiledSum&) = delete;
    CompiledSum& operator=(const CompiledSum&) = delete;

    std::variant<double, Problem> value(const NamedValues& values) {
        for (std::size_t i = 0; i < names_.size(); ++i) {
            const double* value = values.find(names_[i]);
            if (value == nullptr) return Problem{fmt::format("{} has no value", base::shown(names_[i]))};
            values_[i] = *value;
        }
        // A part that is no finite number is not always seen in the whole: min(1/0, 5) is 5, 1/(1/0) is 0. The
        // processor notes it where it arises.
        std::feclearexcept(FE_ALL_EXCEPT);
        int count = 0;
        const double* results = calculator_.Eval(count);
        const bool is_finite = std::fetestexcept(FE_DIVBYZERO | FE_OVERFLOW | FE_INVALID) == 0;
        if (count != 1) return Problem{"more than one value"};
        if (!is_finite || !std::isfinite(results[0])) return Problem{"no finite number"};
        return results[0] + 0.0;  // -0 is 0
    }

private:
    std::vector<std::string> names_;
    std::vector<double> values_;
    Calculator calculator_;
};

// Every sum that this thread has worked out, by its text. A library and a plant's styles have some hundreds; what
// passes the limit comes from a test that makes them up.
class CompiledSums {
public:
    CompiledSum* find(const std::string& text) {
        const auto found = sums_.find(text);
        return found == sums_.end() ? nullptr : found->second.get();
    }
    CompiledSum& add(const std::string& text, std::vector<std::string> names) {
        if (sums_.size() >= most_kept) sums_.clear();
        return *(sums_[text] = std::make_unique<CompiledSum>(text, std::move(names)));
    }

private:
    static constexpr std::size_t most_kept = 2000;
    std::unordered_map<std::string, std::unique_ptr<CompiledSum>> sums_;
};

}  // namespace

void NamedValues::set(std::string_view name, double value) {
    for (auto& entry : values_)
        if (entry.first == name) {
            entry.second = value;
            return;
        }
    values_.emplace_back(name, value);
}

const double* NamedValues::find(std::string_view name) const {
    for (const auto& entry : values_)
        if (entry.first == name) return &entry.second;
    return nullptr;
}

std::vector<std::string> NamedValues::names() const {
    std::vector<std::string> result;
    for (const auto& entry : values_) result.push_back(entry.first);
    return result;
}

bool is_sum_name(std::string_view text) {
    return !text.empty() && is_letter(text.front()) && std::all_of(text.begin(), text.end(), is_name_part) &&
           find_function(text) == nullptr;
}

std::variant<std::vector<std::string>, Problem> names_in_sum(std::string_view text) {
    return SumReader(text).read();
}

std::variant<double, Problem> value_of_sum(const std::string& text, const NamedValues& values) {
    static thread_local CompiledSums compiled;
    try {
        if (CompiledSum* sum = compiled.find(text)) return sum->value(values);
        auto names = names_in_sum(text);
        if (auto* problem = std::get_if<Problem>(&names)) return std::move(*problem);
        return compiled.add(text, std::move(std::get<std::vector<std::string>>(names))).value(values);
    } catch (const mu::ParserError& error) {
        return Problem{fmt::format("not a sum: found {}: {}", base::shown(text), error.GetMsg())};
    }
}

}  // namespace flutebook::fields
