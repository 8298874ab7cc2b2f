// A sum of a box style: text that a person wrote, checked before any library reads it, then worked out with the names'
// values. muParser does the work; sum.cpp is the one file that touches it.
//
// A sum is one value of + - * / ( ), plain decimals, names, min and max of two, floor and ceil of one (with a tolerance
// of 1e-9, as everywhere: floor(2.9999999999) is 3). A minus may begin a sum or what stands in brackets.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include "host/fields/quantity.hpp"

namespace flutebook::fields {

/// Bytes of a sum, and how deep its brackets may nest.
inline constexpr std::size_t longest_sum = 200;
inline constexpr int deepest_sum = 20;

/// What names stand for while sums are worked out. Few, so they are searched in turn.
class NamedValues {
public:
    void set(std::string_view name, double value);
    /// Null where the name has no value.
    [[nodiscard]] const double* find(std::string_view name) const;
    /// Names alone.
    [[nodiscard]] std::vector<std::string> names() const;

private:
    std::vector<std::pair<std::string, double>> values_;
};

/// A letter, then letters, digits and underscores; not the name of a function.
[[nodiscard]] bool is_sum_name(std::string_view text);

/// The names that a sum uses, each once; or why it is no sum, with what was found.
[[nodiscard]] std::variant<std::vector<std::string>, Problem> names_in_sum(std::string_view text);

/// The sum's value, finite; or why it has none: it is no sum, a name has no value, the result or a part of it is no
/// finite number. Any thread: each compiles a sum once, for itself, and keeps it.
[[nodiscard]] std::variant<double, Problem> value_of_sum(const std::string& text, const NamedValues& values);

}  // namespace flutebook::fields
